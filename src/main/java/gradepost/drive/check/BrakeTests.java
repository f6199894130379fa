package gradepost.drive.check;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.RunningTest;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.Action;
import gradepost.plan.BrakeTest;
import gradepost.plan.BrakeTest.NoRoom;
import gradepost.plan.Run;
import gradepost.plan.Trace;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the running brake tests of a run show, and which of them it has no room for. */
public final class BrakeTests {
  /** So long a brake takes to come off at most, s. */
  private static final int EMPTYING_S = 60;

  /**
   * Those on the way of a run, in the order of travel.
   *
   * @param without why some of them are not made, by the distance run of their places, m
   */
  public static List<BrakeTest> of(
      Assignment assignment, TrainModels bench, InstructionRun run, Map<Double, NoRoom> without) {
    List<Action> actions = run.actions();
    if (actions.isEmpty()) {
      return List.of();
    }
    List<RunningTest> tests =
        RunningTest.of(
            assignment, bench, run.points().get(0).atM(), actions.get(actions.size() - 1).atM());
    Run read = new Run(new Trace(run.points()));
    Stepper stepper = bench.plannedStepper();
    List<BrakeTest> out = new ArrayList<>();
    for (RunningTest test : tests) {
      Optional<NoRoom> noRoom =
          Optional.ofNullable(without.get(test.atM()))
              .or(
                  () ->
                      TestRoom.missing(run, assignment.policy(), List.of(test)).stream()
                          .map(TestRoom.Missing::why)
                          .findFirst());
      BrakeTest beside = of(bench, test, read.speedAt(test.atM()), noRoom, stepper);
      out.add(noRoom.isPresent() ? beside : ofRun(beside, actions));
    }
    return List.copyOf(out);
  }

  /** With the speeds of the instructions, to the last digit. */
  private static BrakeTest ofRun(BrakeTest test, List<Action> actions) {
    int applied = TestRoom.madeAt(actions, test.atM()).orElseThrow();
    return new BrakeTest(
        test.place(),
        test.atM(),
        actions.get(applied).speedMps(),
        test.pressurePa(),
        test.heldS(),
        actions.get(applied + 1).speedMps(),
        test.decelerationMps2(),
        test.endM(),
        test.noRoom());
  }

  private static BrakeTest of(
      TrainModels bench,
      RunningTest test,
      double plannedMps,
      Optional<NoRoom> noRoom,
      Stepper stepper) {
    StopConditions until = new StopConditions();
    stepper.place(0, test.atM(), noRoom.isPresent() ? test.aimMps() : plannedMps);
    stepper.brake(bench.slowing(), test.pressurePa());
    stepper.advance(until.time(test.heldS()));
    double after = stepper.speedMps();
    double deceleration = -stepper.accelerationMps2();
    stepper.brake(bench.slowing(), 0);
    for (int s = 0; s < EMPTYING_S && !stepper.brakeOff(); s++) {
      stepper.advance(until.clear().time(stepper.timeS() + 1));
    }
    return new BrakeTest(
        test.place(),
        test.atM(),
        plannedMps,
        test.pressurePa(),
        test.heldS(),
        after,
        deceleration,
        stepper.atM(),
        noRoom);
  }

  private BrakeTests() {}
}
