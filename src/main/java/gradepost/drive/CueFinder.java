package gradepost.drive;

import gradepost.drive.grid.Places;
import gradepost.plan.Cues;
import gradepost.route.Landmark;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Picks what a driver goes by at a braking point. */
final class CueFinder {
  private final Places places;
  private final double reachM;
  private final double alikeM;

  /**
   * @param alikeM the same name within this makes a landmark easy to mistake
   * @param reachM a landmark further back than this is no cue: nobody judges such a distance by eye
   */
  CueFinder(Places places, double reachM, double alikeM) {
    this.places = places;
    this.reachM = reachM;
    this.alikeM = alikeM;
  }

  Cues at(double pointM, double secondsBefore) {
    Optional<Landmark> day = best(pointM, false);
    Optional<Landmark> night = best(pointM, true);
    Optional<Landmark> after =
        places.all().stream().filter(l -> places.placeOf(l) > pointM + 1).findFirst();
    return new Cues(
        places.all().stream().filter(l -> Math.abs(places.placeOf(l) - pointM) < 0.01).findFirst(),
        day,
        day.map(l -> pointM - places.placeOf(l)).orElse(0.0),
        night,
        night.map(l -> pointM - places.placeOf(l)).orElse(0.0),
        after,
        after.map(l -> places.placeOf(l) - pointM).orElse(0.0),
        secondsBefore);
  }

  /** The nearest first; a long sighting and a name of its own are worth some distance. */
  private Optional<Landmark> best(double pointM, boolean atNight) {
    List<Landmark> near =
        places.all().stream()
            .filter(l -> places.placeOf(l) <= pointM + 0.01)
            .filter(l -> places.placeOf(l) >= pointM - reachM - 0.01)
            .filter(l -> !atNight || l.night())
            .toList();
    return near.stream().min(Comparator.comparingDouble(l -> cost(l, pointM)));
  }

  private double cost(Landmark landmark, double pointM) {
    double before = pointM - places.placeOf(landmark);
    double seen = Math.min(landmark.sighting().metres(), 300);
    long alike =
        places.all().stream()
            .filter(l -> l.name().equals(landmark.name()))
            .filter(l -> Math.abs(places.placeOf(l) - places.placeOf(landmark)) < alikeM)
            .count();
    return before - seen / 4 + 60 * (alike - 1);
  }
}
