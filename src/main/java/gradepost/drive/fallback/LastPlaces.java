package gradepost.drive.fallback;

import gradepost.drive.brake.FullBraking;
import gradepost.drive.brake.LastPlace;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.Places;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.plan.CaseResult;
import gradepost.plan.fallback.Latest;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where each brake must be applied in full at the latest, on the run that comes to a target. On the
 * safe side of the plan: worst load, overspeed, counted share of the brakes.
 */
public final class LastPlaces {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Places places;

  public LastPlaces(Assignment assignment, TrainModels bench, Places places) {
    this.assignment = assignment;
    this.bench = bench;
    this.places = places;
  }

  /**
   * How a train comes to an application on one rail.
   *
   * @param planned what the run is picked up with
   * @param dry the plan's own, where that is another one
   */
  public record Coming(ApproachSolution piece, Stepper planned, Optional<ApproachSolution> dry) {}

  /**
   * For a train that was braked before as on this rail and for one that comes as on the planned
   * one: the earlier of both. And never later than on a better rail, where the train may come
   * faster.
   */
  public Latest of(
      Coming run,
      Target target,
      Stepper worst,
      BrakeSystem system,
      Optional<Double> plannedM,
      Optional<CaseResult> better) {
    Latest latest = latest(run.piece(), target, run.planned(), worst, system, plannedM);
    if (run.dry().isPresent()) {
      ApproachSolution dry = run.dry().get();
      Latest asDry = latest(dry, target, bench.plannedStepper(), worst, system, Optional.empty());
      latest = earlier(run, latest, asDry, plannedM);
    }
    return better.isPresent()
        ? earlier(run, latest, better.get().latest(system), plannedM)
        : latest;
  }

  /** Of two last places, the second of them found on another run. */
  private static Latest earlier(Coming run, Latest own, Latest other, Optional<Double> plannedM) {
    return own.match(
        first ->
            other.match(
                second ->
                    second.exactM() >= first.exactM()
                        ? own
                        : new Latest.Point(
                            second.exactM(),
                            second.printedM(),
                            second.speedMps(),
                            afterS(run.piece(), run.planned(), second.exactM(), plannedM)),
                nowhere -> other),
        nowhere -> own);
  }

  /** Running seconds from the planned point to a place; 0 where there is no planned point. */
  private static double afterS(
      ApproachSolution piece, Stepper planned, double atM, Optional<Double> plannedM) {
    if (plannedM.isEmpty()) {
      return 0;
    }
    piece.line().pickUp(planned, atM);
    double timeS = planned.timeS();
    piece.line().pickUp(planned, plannedM.get());
    return timeS - planned.timeS();
  }

  private Latest latest(
      ApproachSolution piece,
      Target target,
      Stepper planned,
      Stepper worst,
      BrakeSystem system,
      Optional<Double> plannedM) {
    double low = piece.line().startM();
    PlannerSettings settings = bench.settings();
    OptionalDouble found =
        new LastPlace(settings.brake(), low, target.atM(), settings.fallback().toleranceM())
            .of(x -> shortM(piece, target, planned, worst, system, x));
    if (found.isEmpty()) {
      piece.line().pickUp(planned, low);
      return new Latest.Nowhere(
          full(target, planned, worst, system).gains(target.atM())
              ? Latest.Reason.GRADIENT_DEFEATS_BRAKE
              : Latest.Reason.APPROACH_TOO_SHORT);
    }
    double exact = found.getAsDouble();
    piece.line().pickUp(planned, exact);
    double speed = planned.speedMps();
    double after = afterS(piece, planned, exact, plannedM);
    double printed = Math.max(low, places.onGrid(exact, target));
    return new Latest.Point(exact, printed, speed, after);
  }

  /** How far short of the target full braking begun at {@code x} on the planned run ends. */
  private double shortM(
      ApproachSolution piece,
      Target target,
      Stepper planned,
      Stepper worst,
      BrakeSystem system,
      double x) {
    piece.line().pickUp(planned, x);
    return full(target, planned, worst, system).shortM();
  }

  /** From where the planned run stands, with what its reservoirs then hold. */
  public FullBraking full(Target target, Stepper planned, Stepper worst, BrakeSystem system) {
    double over = assignment.policy().safeSide().overspeed().metresPerSecond();
    worst.place(planned.timeS(), planned.atM(), planned.speedMps() + over);
    worst.chargeAs(planned);
    return new FullBraking(
        assignment.path().lengthM(), target, worst, bench.worstRig(system, target));
  }
}
