package gradepost.drive.fallback;

import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.plan.Action;
import gradepost.plan.Finding;
import gradepost.stock.BrakeSystem;
import gradepost.stock.PipeLaw;
import gradepost.task.Assignment;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A second application soon after a full release has less to give, until the reservoirs on the
 * vehicles have filled again. Where planned braking uses such a brake, the planned run itself tells
 * how much; where it is the fallback, the caution is for a train that needed it last time too, in
 * full, and released it where the planned run releases.
 */
public final class RechargeCaution {
  /** An action so near the braking point is the one there, m. */
  private static final double AT_POINT_M = 0.01;

  private final Assignment assignment;
  private final TrainModels bench;

  public RechargeCaution(Assignment assignment, TrainModels bench) {
    this.assignment = assignment;
    this.bench = bench;
  }

  /** The caution for one approach of the plan; empty where there is nothing to say. */
  public Optional<Finding.LessToGive> of(ApproachSolution piece, List<Action> actions) {
    if (piece.brakingM().isEmpty()) {
      return Optional.empty();
    }
    double at = piece.brakingM().get();
    BrakeSystem service = assignment.stock().service();
    OptionalDouble braked = brakedS(actions, at);
    if (braked.isEmpty()) {
      return Optional.empty();
    }
    double now = braked.getAsDouble();
    Optional<Action> released =
        actions.stream()
            .filter(a -> a.timeS() < now - Slack.TIME_S && releases(a))
            .reduce((first, second) -> second);
    if (released.isEmpty()) {
      return Optional.empty();
    }
    double after = now - released.get().timeS();
    if (service.recharge().isPresent()) {
      Stepper planned = bench.plannedStepper();
      piece.line().pickUp(planned, at);
      return less(service, true, after, planned.availablePa(bench.service()));
    }
    return assignment.stock().brakes().stream()
        .filter(b -> b.role() == BrakeSystem.Role.FALLBACK && b.recharge().isPresent())
        .findFirst()
        .flatMap(b -> less(b, false, after, availablePa(b, after)));
  }

  /**
   * By the clock of the run, which the pieces do not have: theirs begins at each stop. Empty where
   * the run, which is then not fit for issue, did not come so far.
   */
  private static OptionalDouble brakedS(List<Action> actions, double atM) {
    return actions.stream()
        .filter(a -> a.command().isBrake() && a.atM() > atM - AT_POINT_M)
        .mapToDouble(Action::timeS)
        .findFirst();
  }

  /** Before a start the brake comes off too. */
  private static boolean releases(Action action) {
    return action.command().isRelease() || action.trigger().isStart();
  }

  /** What a full application gives so long after the release of another. */
  static double availablePa(BrakeSystem brake, double afterS) {
    PipeLaw law = brake.pipe().orElseThrow();
    double pipe = law.pipe().pascals();
    double full = brake.full().pascals();
    double left = law.reservoirAfterPa(pipe, 0, full);
    double filled = left + brake.recharge().orElseThrow().pascalsPerSecond() * afterS;
    return Math.min(full, law.equalPa(Math.min(pipe, filled), 0));
  }

  private Optional<Finding.LessToGive> less(
      BrakeSystem brake, boolean planned, double afterS, double givesPa) {
    double full = brake.full().pascals();
    return givesPa > full - assignment.route().units().pressureStepPa()
        ? Optional.empty()
        : Optional.of(new Finding.LessToGive(brake, planned, afterS, givesPa));
  }
}
