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
 */
public record RoadStep(
    String place, String speed, List<String> what, List<String> todo, boolean heading) {
  /** Copies the lists. */
  public RoadStep {
    what = List.copyOf(what);
    todo = List.copyOf(todo);
  }
}
