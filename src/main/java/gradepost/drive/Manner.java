package gradepost.drive;

/**
 * In what manner a stretch is driven: by the policy's rules, or with power taken off sooner than
 * they ask.
 *
 * @param coastS power is off at least this long before a braking point, seconds
 * @param lower the speeds at which power comes off and is taken again are lower by this share
 */
record Manner(RunRules run, double coastS, double lower) {

  /** As the policy has it. */
  static Manner of(RunRules run) {
    return new Manner(run, run.coastBeforeBraking().seconds(), 0);
  }

  Manner coasting(double seconds) {
    return new Manner(run, Math.max(seconds, run.coastBeforeBraking().seconds()), lower);
  }

  Manner lowered(double share) {
    return new Manner(run, coastS, share);
  }
}
