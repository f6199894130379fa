package gradepost.drive;

import gradepost.drive.grid.Places;
import gradepost.plan.Cues;
import gradepost.route.Landmark;
import java.util.Optional;

/** Picks the landmarks at a braking point and behind it. */
final class CueFinder {
  /** A braking point that was planned at a landmark lies no further from it. */
  private static final double AT_M = 0.01;

  /** A landmark so little behind the point is at it. */
  private static final double BEHIND_M = 1;

  private final Places places;

  CueFinder(Places places) {
    this.places = places;
  }

  Cues at(double pointM) {
    Optional<Landmark> after =
        places.all().stream().filter(l -> places.placeOf(l) > pointM + BEHIND_M).findFirst();
    return new Cues(
        places.all().stream().filter(l -> Math.abs(places.placeOf(l) - pointM) < AT_M).findFirst(),
        after,
        after.map(l -> places.placeOf(l) - pointM).orElse(0.0));
  }
}
