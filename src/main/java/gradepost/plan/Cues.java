package gradepost.plan;

import gradepost.route.Landmark;
import java.util.Optional;

/**
 * What a driver goes by at a braking point.
 *
 * @param anchor the landmark that the printed point stands at, where one was in reach
 * @param day the landmark to see by day, at or before the point
 * @param dayBeforeM how far before the point it stands
 * @param night one that serves at night or in fog, at or before the point
 * @param nightBeforeM how far before the point it stands
 * @param backstop the first one after the point: met with no brake on, it is late
 * @param backstopAfterM how far after the point it stands
 * @param secondsBefore running seconds from the last action before the point
 */
public record Cues(
    Optional<Landmark> anchor,
    Optional<Landmark> day,
    double dayBeforeM,
    Optional<Landmark> night,
    double nightBeforeM,
    Optional<Landmark> backstop,
    double backstopAfterM,
    double secondsBefore) {
  public static final Cues NONE =
      new Cues(Optional.empty(), Optional.empty(), 0, Optional.empty(), 0, Optional.empty(), 0, 0);
}
