package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.Planner;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.BrakeTest;
import gradepost.plan.BrakeTest.NoRoom;
import gradepost.plan.Instruction;
import gradepost.route.BrakeTestPlace;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Speed;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Validation, with a pencil: what a running brake test shows; see {@link EvenLine}. */
class BrakeTestsTest {
  private static BrakeTestPlace place(double atM, Direction direction) {
    return new BrakeTestPlace(EvenLine.at(atM), direction, new Speed(18), "");
  }

  private static List<BrakeTest> of(Map<Double, NoRoom> without, BrakeTestPlace... places) {
    Assignment plain = EvenLine.of(0);
    Assignment a = EvenLine.tested(plain, List.of(places));
    Ceiling ceiling = Ceiling.of(plain);
    TrainModels models = new TrainModels(plain);
    InstructionRun run = new InstructionRun(plain, models, ceiling);
    List<Instruction> told =
        ToldInstructions.of(plain, Targets.of(plain, ceiling), Planner.plan(plain).told()).all();
    Map<Target, Integer> numbers = new HashMap<>();
    told.forEach(i -> numbers.put(i.target(), 1));
    run.run(Stops.markM(plain, plain.calls().get(0)), told, numbers);
    return BrakeTests.of(a, new TrainModels(a), run, without);
  }

  /**
   * The policy's first application, 15 psi, as the gauge can show it: 1.0 bar; for 5 s from 18 m/s,
   * where the run has no room. Its mileage is 4.218688 km: 4.21 on the print grid.
   */
  @Test
  void theTestIsTheFirstApplicationForFiveSeconds() {
    NoRoom why = new NoRoom(NoRoom.Reason.SLOW, 3);
    List<BrakeTest> tests = of(Map.of(), place(1000, Direction.FORWARD));
    BrakeTest test = of(Map.of(tests.get(0).atM(), why), place(1000, Direction.FORWARD)).get(0);
    double pa = 100_000;
    PencilBraking held = new PencilBraking(18).after(pa, 5);
    assertThat(test.pressurePa()).isCloseTo(pa, within(1e-6));
    assertThat(test.heldS()).isEqualTo(5);
    assertThat(test.speedAfterMps()).isCloseTo(held.speedMps(), within(1e-4));
    assertThat(test.decelerationMps2())
        .isCloseTo(EvenLine.plannedMps2(pa / 6894.757293168), within(1e-9));
    double emptyS = 0.3 + 1;
    double endM = new PencilBraking(18).after(pa, 5).after(0, emptyS).distanceM();
    assertThat(test.endM()).isBetween(991.312 + endM - 1e-3, 991.312 + endM + 18);
    assertThat(test.atM()).isCloseTo(991.312, within(1e-6));
    assertThat(test.noRoom()).contains(why);
  }

  @Test
  void onlyThoseOfThisDirectionOnTheWayInTheOrderOfTravel() {
    List<BrakeTest> tests =
        of(
            Map.of(),
            place(3000, Direction.FORWARD),
            place(2000, Direction.BACKWARD),
            place(1000, Direction.FORWARD),
            place(150, Direction.FORWARD),
            place(5900, Direction.FORWARD));
    assertThat(tests).hasSize(2).noneMatch(BrakeTest::made);
    assertThat(tests.get(0).atM()).isCloseTo(991.312, within(1e-6));
    assertThat(tests.get(1).atM()).isCloseTo(2991.312, within(1e-6));
  }
}
