package gradepost.app.shelf;

import java.util.List;

/**
 * One place of the road, for whoever learns it.
 *
 * @param place its mileage
 * @param speed of the run there, with its unit; empty text where it does not come
 * @param what is there
 * @param todo what to do there
 * @param heading whether it is a station
 * @param atS seconds of the planned run at which it is met, without the time at stands
 */
public record RoadStep(
    String place, String speed, List<String> what, List<String> todo, boolean heading, double atS) {
  /** Copies the lists. */
  public RoadStep {
    what = List.copyOf(what);
    todo = List.copyOf(todo);
  }
}
