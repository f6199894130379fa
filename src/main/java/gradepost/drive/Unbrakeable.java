package gradepost.drive;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.TrainBrake;
import gradepost.plan.PlanFailure;
import gradepost.route.GradientPiece;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;

/**
 * Which target a run that fails cannot be braked for, and why: found by running backwards from the
 * target with the planned main application only.
 */
final class Unbrakeable {
  private static final double STEP_M = 5;

  /** A brake that takes off less than this does not slow a train, m/s². */
  private static final double SLOWS_MPS2 = 0.02;

  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;

  private Unbrakeable(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
  }

  /** The first target that fails; empty if no failure has to do with braking. */
  static Optional<PlanFailure.CannotBrake> of(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      List<ApproachSolution> pieces,
      List<PlanFailure> failures) {
    if (failures.stream().noneMatch(PlanFailure::mayFollow)) {
      return Optional.empty();
    }
    double tolerance = assignment.policy().margins().stopTolerance().metres();
    double firstM =
        failures.stream()
            .flatMap(f -> f.over().stream())
            .mapToDouble(PlanFailure.OverCeiling::atM)
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    int fails = pieces.size();
    for (int i = pieces.size() - 1; i >= 0; i--) {
      ApproachSolution piece = pieces.get(i);
      double shortM = piece.target().atM() - piece.endM();
      boolean misses = piece.target().isStop() && (shortM < -0.01 || shortM > tolerance);
      // Too fast behind a board: the speed of that board was not met.
      boolean over =
          piece.target().atM() <= firstM + 1
              && (i + 1 == pieces.size() || pieces.get(i + 1).target().atM() > firstM + 1)
              && firstM < Double.POSITIVE_INFINITY;
      fails = !piece.found() || misses || over ? i : fails;
    }
    if (fails == pieces.size()) {
      return Optional.empty();
    }
    Optional<Target> before =
        fails == 0 ? Optional.empty() : Optional.of(pieces.get(fails - 1).target());
    return Optional.of(
        new Unbrakeable(assignment, bench, ceiling)
            .why(pieces.get(fails).target(), pieces.get(fails).fromM(), before));
  }

  private PlanFailure.CannotBrake why(Target target, double fromM, Optional<Target> before) {
    TrainBrake rig = bench.service(target);
    double mainPa =
        Math.min(
            Braking.of(assignment, bench, target).mainPa(),
            assignment.stock().service().full().pascals());
    double entryMps = before.map(Target::speedMps).orElse(0.0);
    double square = target.speedMps() * target.speedMps();
    for (double at = target.atM() - STEP_M / 2; at > fromM; at -= STEP_M) {
      double speed = Math.sqrt(square);
      double slows = bench.brakedMps2(rig, speed, mainPa) - bench.accelerationMps2(-1, speed, at);
      if (slows < SLOWS_MPS2) {
        return new PlanFailure.CannotBrake(
            target, PlanFailure.CannotBrake.Cause.FALL, at, permille(at), entryMps, mainPa);
      }
      square += 2 * slows * STEP_M;
      if (Math.sqrt(square) >= ceiling.speedAt(at)) {
        return new PlanFailure.CannotBrake(
            target, PlanFailure.CannotBrake.Cause.UNKNOWN, at, permille(at), entryMps, mainPa);
      }
    }
    PlanFailure.CannotBrake.Cause cause =
        square < entryMps * entryMps
            ? PlanFailure.CannotBrake.Cause.TOO_NEAR
            : PlanFailure.CannotBrake.Cause.UNKNOWN;
    return new PlanFailure.CannotBrake(target, cause, fromM, permille(fromM), entryMps, mainPa);
  }

  private double permille(double atM) {
    for (GradientPiece piece : assignment.route().gradients()) {
      if (assignment.path().span(piece.extent()).offM(atM) == 0) {
        return assignment.direction() == Direction.FORWARD
            ? piece.gradient().permille()
            : piece.gradient().reversed().permille();
      }
    }
    return 0;
  }
}
