package gradepost.drive.fallback;

import gradepost.drive.brake.Braking;
import gradepost.plan.Action;
import java.util.List;
import java.util.Optional;

/**
 * The planned point in one state of the rail.
 *
 * @param atM on the print grid; empty where there is none
 * @param mainPa the main application there
 * @param nominal the technique as this rail carries it, before it is solved for the place
 * @param braking the technique that is printed; empty where there is no point
 * @param actions what is done from there on, as it comes out on this rail
 */
record PlannedPoint(
    Optional<Double> atM,
    double mainPa,
    Braking nominal,
    Optional<Braking> braking,
    List<Action> actions) {
  PlannedPoint {
    actions = List.copyOf(actions);
  }

  static PlannedPoint none(Braking nominal) {
    return new PlannedPoint(
        Optional.empty(), nominal.mainPa(), nominal, Optional.empty(), List.of());
  }
}
