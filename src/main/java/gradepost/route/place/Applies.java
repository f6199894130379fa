package gradepost.route.place;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;

/**
 * For whom an element stands: the directions and the running lines.
 *
 * @param directions never empty
 * @param lines names of running lines; empty means every line
 */
public record Applies(Set<Direction> directions, Set<String> lines) {
  public static final Applies EVERYWHERE =
      new Applies(Set.of(Direction.FORWARD, Direction.BACKWARD), Set.of());

  public Applies {
    directions = Direction.inOrder(directions);
    lines = Collections.unmodifiableSet(new LinkedHashSet<>(lines));
    if (directions.isEmpty()) {
      throw new IllegalArgumentException("an element applies to one direction at least");
    }
  }

  /** Whether it stands for a train in this direction on one of these lines. */
  public boolean to(Direction direction, Set<String> linesTaken) {
    return directions.contains(direction)
        && (lines.isEmpty() || lines.stream().anyMatch(linesTaken::contains));
  }
}
