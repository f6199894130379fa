package gradepost.app.store;

import gradepost.yaml.Problem;
import gradepost.yaml.Severity;

/** From which problem on a command is not good, so that a build server stops. */
public enum FailOn {
  /** Data that cannot be used. */
  ERRORS,
  /** Data that somebody has to look at. */
  WARNINGS;

  boolean counts(Problem problem) {
    return problem.severity() == Severity.ERROR
        || (this == WARNINGS && problem.severity() == Severity.WARNING);
  }
}
