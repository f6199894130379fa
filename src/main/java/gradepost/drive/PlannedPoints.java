package gradepost.drive;

import gradepost.motion.Stepper;
import java.util.Optional;

/**
 * Where the brake goes on in another state of the rail than the planned one, on the same run: never
 * later, and light and long, so that every axle is carried by the rail that the braking passes.
 */
final class PlannedPoints {
  private static final double TOLERANCE_M = 0.01;

  /** Each round takes in what an earlier point passes more; the sites of a leg are few. */
  private static final int ROUNDS = 5;

  private final Assignment assignment;
  private final Bench bench;
  private final Places places;

  PlannedPoints(Assignment assignment, Bench bench, Places places) {
    this.assignment = assignment;
    this.bench = bench;
    this.places = places;
  }

  /** Where a target is to be met. */
  double aimM(Target target) {
    return target.speedMps() == 0
        ? target.atM()
        : target.atM() - assignment.policy().margins().beforeBoard().metres();
  }

  PlannedPoint in(AdhesionCase adhesion, Piece piece) {
    Carried carried = new Carried(assignment, bench, adhesion);
    Braking usual = Braking.of(assignment, bench, piece.target());
    double from = piece.brakingM().orElse(aimM(piece.target()));
    PlannedPoint point = new PlannedPoint(Optional.empty(), 0, Optional.empty());
    for (int round = 0; round < ROUNDS; round++) {
      double passed = from;
      Braking light = carried.lighter(usual, piece.brakingMps(), passed, piece.target().atM());
      Optional<Braking> own =
          piece
              .braking()
              .map(b -> carried.lighter(b, piece.brakingMps(), passed, piece.target().atM()));
      point = point(piece, adhesion, light, own);
      if (point.atM().isEmpty() || point.atM().get() >= from) {
        return point;
      }
      from = point.atM().get();
    }
    return point;
  }

  /**
   * @param light the policy's technique as this rail carries it
   * @param own the planned one, likewise
   */
  private PlannedPoint point(
      Piece piece, AdhesionCase adhesion, Braking light, Optional<Braking> own) {
    Stepper planned = bench.plannedStepper();
    Stepper stepper = bench.plannedStepper(adhesion);
    double aimM = aimM(piece.target());
    double high = Math.max(piece.line().startM(), aimM);
    double low = piece.line().startM();
    double exact =
        Root.lastShort(x -> shortM(piece, planned, stepper, light, x), low, high, TOLERANCE_M);
    if (Double.isNaN(exact)) {
      return new PlannedPoint(Optional.empty(), light.mainPa(), Optional.of(light));
    }
    double latest = Math.min(exact, piece.brakingM().orElse(exact));
    double at = Math.max(low, places.onGrid(latest, piece.target().atM()));
    if (own.isPresent() && shortM(piece, planned, stepper, own.get(), at) > -TOLERANCE_M) {
      return new PlannedPoint(Optional.of(at), own.get().mainPa(), Optional.of(light));
    }
    place(piece, planned, stepper, at);
    boolean stop = piece.target().speedMps() == 0;
    Braking solved = new Solver(assignment).forPlace(light, stepper, stepper.save(), aimM, stop);
    return new PlannedPoint(
        Optional.of(at), Math.min(solved.mainPa(), light.mainPa()), Optional.of(light));
  }

  private double shortM(
      Piece piece, Stepper planned, Stepper stepper, Braking braking, double atM) {
    place(piece, planned, stepper, atM);
    Braking.Outcome outcome = braking.run(stepper);
    return outcome.shortOf(aimM(piece.target()));
  }

  private static void place(Piece piece, Stepper planned, Stepper stepper, double atM) {
    piece.line().pickUp(planned, atM);
    stepper.place(planned.timeS(), planned.atM(), planned.speedMps());
    stepper.chargeAs(planned);
  }
}
