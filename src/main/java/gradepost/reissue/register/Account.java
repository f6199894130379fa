package gradepost.reissue.register;

import java.time.LocalDateTime;
import java.util.Locale;

/**
 * Somebody who may use the desk.
 *
 * @param name under which acts are entered
 * @param first whether the password is the one that was given, to be changed at the first entry
 * @param since when the password was set
 * @param shut whether nobody comes in by it
 * @param sessions goes up whenever all that came in before have to come in again
 */
public record Account(
    String name, Role role, boolean first, LocalDateTime since, boolean shut, int sessions) {

  /** What somebody is at the depot. */
  public enum Role {
    /** Issues and edits. */
    CLERK,
    /** Signs off and teaches. */
    INSTRUCTOR,
    /** Reads and practises. */
    LEARNER;

    /** As it is typed. */
    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
