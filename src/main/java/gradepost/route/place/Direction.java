package gradepost.route.place;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * Which way along the route. Sections are listed in the order in which {@code FORWARD} meets them;
 * the route gives each way its own name (for example Down and Up).
 */
public enum Direction {
  FORWARD,
  BACKWARD;

  /** The same directions, always in one order. */
  public static Set<Direction> inOrder(Set<Direction> directions) {
    Set<Direction> ordered = new LinkedHashSet<>();
    for (Direction each : values()) {
      if (directions.contains(each)) {
        ordered.add(each);
      }
    }
    return Collections.unmodifiableSet(ordered);
  }

  /** The other direction. */
  public Direction opposite() {
    return this == FORWARD ? BACKWARD : FORWARD;
  }
}
