package gradepost.drive.leg;

import gradepost.drive.brake.PointLimits;
import gradepost.plan.Plan;
import java.util.List;
import java.util.Optional;

/**
 * A run that was chosen.
 *
 * @param stallsM where the train comes to a stand for want of power
 * @param fastest what the fastest run costs
 * @param driven its legs, in order
 * @param limits that it keeps
 */
public record ChosenRun(
    List<ApproachSolution> pieces,
    Optional<Double> stallsM,
    Plan.Cost fastest,
    List<DrivenLeg> driven,
    PointLimits limits) {
  public ChosenRun {
    pieces = List.copyOf(pieces);
    driven = List.copyOf(driven);
  }
}
