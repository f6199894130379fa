package gradepost.drive.check;

import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.BrakeTest;
import gradepost.plan.Trace;
import gradepost.route.BrakeTestPlace;
import gradepost.task.Assignment;
import java.util.List;

/** Works out what the running brake tests should show. */
public final class BrakeTests {
  /** The tests of this direction, on the run that is planned, in the order of travel. */
  public static List<BrakeTest> of(Assignment assignment, TrainModels bench, Trace trace) {
    Stepper stepper = bench.plannedStepper();
    return assignment.route().brakeTests().stream()
        .filter(t -> t.direction() == assignment.direction())
        .map(t -> of(assignment, bench, trace, t, stepper))
        .sorted(java.util.Comparator.comparingDouble(BrakeTest::atM))
        .toList();
  }

  private static BrakeTest of(
      Assignment assignment,
      TrainModels bench,
      Trace trace,
      BrakeTestPlace place,
      Stepper stepper) {
    double at = assignment.path().metresAt(place.location());
    double pressure = assignment.policy().stopping().first().pascals();
    double heldS = assignment.policy().practice().line().testHeld().seconds();
    stepper.place(0, at, place.speed().metresPerSecond());
    stepper.brake(bench.service(), pressure);
    stepper.advance(new StopConditions().time(heldS));
    double after = stepper.speedMps();
    double deceleration = -stepper.accelerationMps2();
    double emptyS = bench.service().deadTimeS() + bench.service().lastDelayS();
    emptyS += pressure / bench.service().releasePaPerS();
    stepper.brake(bench.service(), 0);
    stepper.advance(new StopConditions().time(heldS + emptyS));
    double planned =
        trace.points().stream()
            .filter(p -> p.atM() <= at)
            .reduce((first, second) -> second)
            .map(Trace.Point::speedMps)
            .orElse(0.0);
    return new BrakeTest(place, at, planned, pressure, heldS, after, deceleration, stepper.atM());
  }

  private BrakeTests() {}
}
