package gradepost.route;

/** Whether a curve has a check rail, and beside which running rail. */
public enum CheckRail {
  NONE,
  /** Beside the inner rail, the low one on a canted curve: the usual place. */
  LOW_RAIL,
  /** Beside the outer rail. */
  HIGH_RAIL,
  BOTH
}
