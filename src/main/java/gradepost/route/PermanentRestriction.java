package gradepost.route;

import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.units.Speed;
import java.util.List;

/**
 * A permanent speed restriction or, where it is higher than its neighbours, the line's own
 * permissible speed over a stretch.
 *
 * @param boards the signs that announce it; empty where nothing at the lineside does
 */
public record PermanentRestriction(
    String name,
    Extent extent,
    Applies applies,
    Speed speed,
    List<Differential> differentials,
    List<Board> boards,
    String reason) {
  public PermanentRestriction {
    differentials = List.copyOf(differentials);
    boards = List.copyOf(boards);
  }

  /** The speed for a train that belongs to these classes: the highest that names one of them. */
  public Speed speedFor(List<String> trainClasses) {
    return Differentials.speedFor(speed, differentials, trainClasses);
  }
}
