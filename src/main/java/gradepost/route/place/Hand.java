package gradepost.route.place;

/** The side to which a curve turns, or on which a thing stands. */
public enum Hand {
  LEFT,
  RIGHT;

  /** The other side. */
  public Hand opposite() {
    return this == LEFT ? RIGHT : LEFT;
  }
}
