package gradepost.route;

import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import java.util.List;
import java.util.Set;

/**
 * A running line by its lineside name.
 *
 * @param extents where it exists; empty means the whole route
 * @param directions which ways trains are signalled on it
 */
public record RunningLine(String name, List<Extent> extents, Set<Direction> directions) {
  public RunningLine {
    extents = List.copyOf(extents);
    directions = Direction.inOrder(directions);
  }
}
