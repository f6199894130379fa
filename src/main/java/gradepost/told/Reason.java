package gradepost.told;

/** Why there is no such place: for the reader. */
public enum Reason {
  /** The brake, fully on, does not slow the train: the fall is too steep. */
  GRADIENT_DEFEATS_BRAKE,
  /** Even from the start of the approach it is too late. */
  APPROACH_TOO_SHORT,
  /** The speed is dropping, but the route data end first. */
  TRACK_ENDS,
  /** The buffer stops come first. */
  BUFFER_STOPS
}
