package gradepost.drive;

/**
 * In what manner a leg is driven: by the policy's rules, and within them by a guide.
 *
 * @param coastS power is off at least this long before a braking point, seconds
 */
record Manner(RunRules run, double coastS, Guide guide) {

  /** As the policy has it. */
  static Manner of(RunRules run) {
    return new Manner(run, run.coastBeforeBraking().seconds(), Guide.NONE);
  }

  /** With longer coasting before a braking; never less than the policy asks. */
  Manner coasting(double seconds) {
    return new Manner(run, Math.max(seconds, run.coastBeforeBraking().seconds()), guide);
  }

  Manner by(Guide other) {
    return new Manner(run, coastS, other);
  }
}
