package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.BrakeTest;
import gradepost.plan.Trace;
import gradepost.route.BrakeTestPlace;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.units.Speed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Validation, with a pencil: what a running brake test shows; see {@link EvenLine}. */
class BrakeTestsTest {
  private static BrakeTestPlace place(double atM, Direction direction) {
    return new BrakeTestPlace(EvenLine.at(atM), direction, new Speed(18), "");
  }

  private static List<BrakeTest> of(Trace trace, BrakeTestPlace... places) {
    Assignment a = EvenLine.tested(EvenLine.of(0), List.of(places));
    return BrakeTests.of(a, new TrainModels(a), trace);
  }

  private static Trace.Point point(double atM, double mps) {
    return new Trace.Point(0, atM, mps, 0, -1);
  }

  /** The policy's first application, 15 psi, for 5 s from 18 m/s. */
  @Test
  void theTestIsTheFirstApplicationForFiveSeconds() {
    Trace trace = new Trace(List.of(point(500, 10), point(1000, 15), point(1000.1, 16)));
    BrakeTest test = of(trace, place(1000, Direction.FORWARD)).get(0);
    double pa = EvenLine.pascals(15);
    PencilBraking held = new PencilBraking(18).after(pa, 5);
    assertThat(test.pressurePa()).isCloseTo(pa, within(1e-6));
    assertThat(test.heldS()).isEqualTo(5);
    assertThat(test.speedAfterMps()).isCloseTo(held.speedMps(), within(1e-4));
    assertThat(test.decelerationMps2()).isCloseTo(EvenLine.plannedMps2(15), within(1e-9));
    double emptyS = 0.3 + 1;
    double endM = new PencilBraking(18).after(pa, 5).after(0, emptyS).distanceM();
    assertThat(test.endM()).isCloseTo(1000 + endM, within(1e-3));
    assertThat(test.atM()).isCloseTo(1000, within(1e-6));
    assertThat(test.plannedMps()).isEqualTo(15);
  }

  @Test
  void onlyThoseOfThisDirectionInTheOrderOfTravel() {
    List<BrakeTest> tests =
        of(
            new Trace(List.of(point(1500, 10))),
            place(3000, Direction.FORWARD),
            place(2000, Direction.BACKWARD),
            place(1000, Direction.FORWARD));
    assertThat(tests).extracting(BrakeTest::plannedMps).containsExactly(0.0, 10.0);
    assertThat(tests.get(0).atM()).isCloseTo(1000, within(1e-6));
  }
}
