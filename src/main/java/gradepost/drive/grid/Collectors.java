package gradepost.drive.grid;

import gradepost.route.RailGap;
import gradepost.route.Stretch;
import gradepost.stock.Formation;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a train takes its current: each motored vehicle has collectors at both ends.
 *
 * @param firstM how far behind the front of the train the foremost is, metres
 * @param leadM how far behind it the rear of the leading motored vehicle is, metres
 * @param lastM how far behind it the rearmost is, metres
 */
public record Collectors(double firstM, double leadM, double lastM) {
  /** Of this train; empty where no vehicle of it has any. */
  public static Optional<Collectors> of(Formation formation) {
    double first = -1;
    double lead = 0;
    double last = 0;
    double at = 0;
    for (Vehicle vehicle : formation.vehicles()) {
      if (vehicle.motored()) {
        last = at + vehicle.length().metres();
        lead = first < 0 ? last : lead;
        first = first < 0 ? at : first;
      }
      at += vehicle.length().metres();
    }
    return first < 0 ? Optional.empty() : Optional.of(new Collectors(first, lead, last));
  }

  /** Whether all are between two places, with the front of the train there. */
  public boolean within(double fromM, double toM, double frontM) {
    return frontM - firstM <= toM && frontM - lastM >= fromM;
  }

  /**
   * The gaps that a run meets: from where the front comes to one until the last collector is past
   * it, distances run by the front, in the order of the route.
   */
  public static List<Stretch> overGaps(Assignment assignment) {
    return overGaps(assignment, of(assignment.formation()).map(Collectors::lastM).orElse(0.0));
  }

  /** The same, only until the leading motored vehicle is past, which then pulls the others over. */
  static List<Stretch> leadOverGaps(Assignment assignment) {
    return overGaps(assignment, of(assignment.formation()).map(Collectors::leadM).orElse(0.0));
  }

  private static List<Stretch> overGaps(Assignment assignment, double untilM) {
    List<Stretch> all = new ArrayList<>();
    for (RailGap gap : assignment.route().railGaps()) {
      if (Ceiling.stands(assignment, gap.applies())) {
        Stretch dead = assignment.path().span(gap.extent());
        all.add(new Stretch(dead.fromM(), dead.toM() + untilM));
      }
    }
    return all;
  }
}
