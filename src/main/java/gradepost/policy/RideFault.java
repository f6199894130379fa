package gradepost.policy;

/** What an assessed ride can be failed for, whatever its score. */
public enum RideFault {
  /** Some part of the train over the permissible speed. */
  OVERSPEED,
  /** A stop beyond its mark. */
  PAST_THE_MARK,
  /** A handle movement that the stock forbids. */
  FORBIDDEN_MOVEMENT
}
