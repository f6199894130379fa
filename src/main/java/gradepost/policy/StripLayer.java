package gradepost.policy;

/** What can be left out of a strip, for a learner to fill in. */
public enum StripLayer {
  SPEEDS,
  GRADIENTS,
  CURVES,
  /** Names of what stands beside the line; the marks stay. */
  NAMES,
  PLATFORMS
}
