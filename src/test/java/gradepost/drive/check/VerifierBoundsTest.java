package gradepost.drive.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Arrangements;
import gradepost.drive.Mill;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.PlanFailure;
import gradepost.plan.Trigger;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Pressure;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Property: what keeps a plan from issue does so just beyond its bound, and not just within it. The
 * line is level where the train starts, and its permissible speed is 5 m/s.
 */
class VerifierBoundsTest {
  private static final double LINE_MPS = 5;

  /** What the policy of the tests allows a stop to be short of its mark. */
  private static final double TOLERANCE_M = 5;

  private static final Command.Brake BRAKE =
      new Command.Brake(Pressure.ofPsi(15).pascals(), Command.Stage.FIRST);

  private final Assignment assignment = Mill.assignment(Direction.FORWARD, "4-car");
  private final TrainModels models = new TrainModels(assignment);
  private final Target.Stop booked =
      Targets.of(assignment, Ceiling.of(assignment)).stream()
          .flatMap(t -> t.stop().stream())
          .findFirst()
          .orElseThrow();
  private final double startM = Stops.markM(assignment, assignment.calls().get(0));
  private final List<Instruction> instructions = new ArrayList<>();
  private Target target = booked;

  private void add(Trigger trigger, Command command) {
    instructions.add(new Instruction(target, trigger, command));
  }

  private InstructionRun run() {
    Ceiling ceiling = new Ceiling(List.of(new CeilingStep(0, 8000, LINE_MPS, "line")));
    InstructionRun verifier = new InstructionRun(assignment, models, ceiling);
    verifier.run(startM, instructions, Map.of(target, 1));
    return verifier;
  }

  private List<PlanFailure> upTo(double speedMps) {
    instructions.clear();
    add(new Trigger.Start(), new Command.Power(0));
    add(new Trigger.SpeedUpTo(speedMps), new Command.ShutOff());
    add(new Trigger.After(1), BRAKE);
    add(new Trigger.Standstill(), new Command.Stand());
    return run().failures().stream().filter(f -> f.over().isPresent()).toList();
  }

  /** A thousandth of a metre a second is what a printed speed may be off; no more. */
  @Test
  void aSpeedAboveThePermissibleOneIsABreachByTheThousandth() {
    assertThat(upTo(LINE_MPS)).isEmpty();
    assertThat(upTo(LINE_MPS + 0.0008)).isEmpty();
    List<PlanFailure> breach = upTo(LINE_MPS + 0.0015);
    assertThat(breach).hasSize(1);
    PlanFailure.OverCeiling over = breach.get(0).over().orElseThrow();
    assertThat(over.speedMps()).isCloseTo(LINE_MPS + 0.0015, within(1e-4));
    assertThat(over.ceilingMps()).isEqualTo(LINE_MPS);
    assertThat(over.atM()).isGreaterThan(startM);
  }

  private List<PlanFailure> stops(double shortM) {
    target = booked;
    stopping();
    List<Action> actions = run().actions();
    double standsM = actions.get(actions.size() - 1).atM();
    target =
        new Target.Stop(
            booked.name(),
            booked.call(),
            booked.markText(),
            standsM + shortM,
            booked.platformStartM(),
            booked.platformEndM(),
            Optional.empty());
    stopping();
    return run().failures();
  }

  private void stopping() {
    instructions.clear();
    add(new Trigger.Start(), new Command.Power(0));
    add(new Trigger.SpeedUpTo(4), new Command.ShutOff());
    add(new Trigger.After(1), BRAKE);
    add(new Trigger.Standstill(), new Command.Stand());
  }

  @Test
  void aStopShortOfItsMarkByMoreThanTheToleranceIsNotFit() {
    assertThat(assignment.policy().margins().stopTolerance().metres()).isEqualTo(TOLERANCE_M);
    assertThat(stops(0)).isEmpty();
    assertThat(stops(TOLERANCE_M - 0.01)).isEmpty();
    assertThat(stops(TOLERANCE_M + 0.01))
        .singleElement()
        .isInstanceOfSatisfying(
            PlanFailure.StopOutsideTolerance.class,
            f -> {
              assertThat(f.shortM()).isCloseTo(TOLERANCE_M + 0.01, within(1e-6));
              assertThat(f.toleranceM()).isEqualTo(TOLERANCE_M);
            });
  }

  /** A centimetre is the arithmetic's; beyond its mark no train is planned to stand. */
  @Test
  void aStopPastItsMarkIsNotFit() {
    assertThat(stops(-0.005)).isEmpty();
    assertThat(stops(-0.02))
        .singleElement()
        .isInstanceOfSatisfying(
            PlanFailure.StopOutsideTolerance.class,
            f -> assertThat(f.shortM()).isCloseTo(-0.02, within(1e-6)));
  }

  /** A lower speed that is met on the way is no stop, wherever the train stands. */
  @Test
  void onlyABookedStopIsMeasured() {
    target = new Target.Signal("S 1", startM + 900);
    stopping();
    assertThat(run().failures()).isEmpty();
  }

  private List<PlanFailure> movements(Command... commands) {
    instructions.clear();
    add(new Trigger.Start(), commands[0]);
    for (int i = 1; i < commands.length; i++) {
      add(new Trigger.After(2), commands[i]);
    }
    return run().failures().stream()
        .filter(f -> f instanceof PlanFailure.ForbiddenMovement)
        .toList();
  }

  /** The brake of this unit may be eased; power may not be taken off notch by notch. */
  @Test
  void movementsThatTheHandlesAllowAreNone() {
    Command.Brake less = new Command.Brake(Pressure.ofPsi(8).pascals(), Command.Stage.EASE);
    assertThat(
            movements(
                new Command.Power(0), new Command.Power(1), new Command.ShutOff(), BRAKE, less))
        .isEmpty();
    assertThat(movements(new Command.Power(0), new Command.Power(2))).hasSize(1);
    assertThat(movements(new Command.Power(0), new Command.Power(1), new Command.Power(0)))
        .hasSize(1);
    assertThat(movements(new Command.Power(0), BRAKE)).hasSize(1);
    assertThat(movements(new Command.Power(0), new Command.ShutOff(), BRAKE, new Command.Power(0)))
        .hasSize(1);
  }

  /**
   * Full release only: the brake of this unit cannot be eased, and an ease is no movement of it.
   */
  @Test
  void aBrakeThatOnlyReleasesWholeCannotBeEased() {
    Assignment whole =
        Arrangements.assignment(Direction.FORWARD, 0, Arrangements.onePipe(), Mill.policy());
    TrainModels itsModels = new TrainModels(whole);
    assertThat(itsModels.service().gradualRelease()).isFalse();
    Ceiling ceiling = new Ceiling(List.of(new CeilingStep(0, 8000, LINE_MPS, "line")));
    Command.Brake less = new Command.Brake(Pressure.ofPsi(8).pascals(), Command.Stage.EASE);
    for (Command.Brake second : List.of(BRAKE, less)) {
      instructions.clear();
      add(new Trigger.Start(), new Command.Power(0));
      add(new Trigger.SpeedUpTo(3), new Command.ShutOff());
      add(new Trigger.After(1), BRAKE);
      add(new Trigger.After(1), second);
      InstructionRun run = new InstructionRun(whole, itsModels, ceiling);
      run.run(Stops.markM(whole, whole.calls().get(0)), instructions, Map.of(target, 1));
      assertThat(run.failures())
          .filteredOn(f -> f instanceof PlanFailure.ForbiddenMovement)
          .hasSize(second.equals(less) ? 1 : 0);
    }
  }
}
