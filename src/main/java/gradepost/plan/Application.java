package gradepost.plan;

import gradepost.plan.fallback.Rung;
import gradepost.route.Landmark;
import gradepost.stock.BrakeSystem;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One application of the brake on the way to a target, with all that can go wrong at it. Most
 * approaches have one; up a terminal platform there is one for each step of the speed that the
 * train is too fast for, and one to stand.
 *
 * @param target what it is for: the approach's own target, or a terminal step before it
 * @param exactBrakingPointM as computed
 * @param brakingPointM on the print grid, at or before the exact one
 * @param setBy what set it
 * @param landmark the nearest one at or before the printed point
 * @param cues what the driver goes by at the printed point
 * @param endM where the planned run meets the target, or the brake is off again
 * @param cases one for each adhesion case, the planned one first; to the target of the application
 * @param toStand the same to a stand at the mark, where the application is for a step before it;
 *     else empty
 * @param atBuffersMps speed at the buffer stops if nothing more is done from here on, with the
 *     overspeed allowance; empty where there are none or the train does not come so far
 * @param curves the run at the latest point of each brake
 * @param bySpeed where to brake from other speeds, from the highest down; the planned point is one
 *     of them
 */
public record Application(
    Target target,
    double exactBrakingPointM,
    double brakingPointM,
    SetBy setBy,
    Optional<Landmark> landmark,
    Cues cues,
    double brakingSpeedMps,
    double mainPressurePa,
    double endM,
    List<CaseResult> cases,
    List<CaseResult> toStand,
    Optional<Double> atBuffersMps,
    List<LatestCurve> curves,
    List<SpeedRow> bySpeed) {
  /** What set a braking point: the braking itself, or what wants the brake on before that. */
  public enum SetBy {
    /** The braking, as computed. */
    COMPUTED,
    /** A landmark that stands in for the computed point, and is before it. */
    CUE,
    /** That the next brake is still enough if this one fails. */
    NEXT_BRAKE,
    /** That no more runs than the policy's share are late. */
    LATE_SHARE
  }

  public Application {
    cases = List.copyOf(cases);
    toStand = List.copyOf(toStand);
    curves = List.copyOf(curves);
    bySpeed = List.copyOf(bySpeed);
  }

  /** Whether it is for a step of the speed on the way to the stop. */
  public boolean forStep() {
    return !toStand.isEmpty();
  }

  /**
   * As the driver is told. Who brakes late with a brake that works has the step to keep; who has
   * none has to stand before the buffers, and what another brake does for him is told to the mark.
   */
  public List<CaseResult> told() {
    if (!forStep()) {
      return cases;
    }
    List<CaseResult> out = new ArrayList<>();
    for (int i = 0; i < cases.size(); i++) {
      CaseResult own = cases.get(i);
      CaseResult stand = toStand.get(i);
      List<Rung> rungs = new ArrayList<>();
      for (int k = 0; k < own.ladder().size(); k++) {
        boolean service = own.ladder().get(k).brake().role() == BrakeSystem.Role.SERVICE;
        rungs.add((service ? own : stand).ladder().get(k));
      }
      out.add(own.with(rungs, stand.answers()));
    }
    return out;
  }
}
