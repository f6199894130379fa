package gradepost.route;

/**
 * Which way along the route. Sections are listed in the order in which {@code FORWARD} meets them;
 * the route gives each way its own name (for example Down and Up).
 */
public enum Direction {
  FORWARD,
  BACKWARD;

  public Direction opposite() {
    return this == FORWARD ? BACKWARD : FORWARD;
  }
}
