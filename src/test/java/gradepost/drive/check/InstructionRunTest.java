package gradepost.drive.check;

import static gradepost.drive.EvenLine.SEATED_T;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Arrangements;
import gradepost.drive.EvenLine;
import gradepost.drive.Mill;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.PlanFailure;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Stops;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: instructions carried out on an even line; see {@link EvenLine}. In the
 * first notch 44 kN move 172.8 t, up to 6 mph.
 */
class InstructionRunTest {
  private static final double START_M = 1000;
  private static final double MPS2 = 44 / SEATED_T;
  private static final double PSI_15 = EvenLine.pascals(15);
  private static final Target BOARD = new Target.TerminalStep("board", 3000, 5, 20);

  private final List<Instruction> told = new ArrayList<>();
  private Target target = BOARD;
  private boolean all;

  private void told(Trigger trigger, Command command) {
    told.add(new Instruction(target, trigger, command));
  }

  private InstructionRun run(double permille, double ceilingMps) {
    return run(EvenLine.of(permille), new CeilingStep(0, EvenLine.LENGTH_M, ceilingMps, "line"));
  }

  private InstructionRun run(Assignment a, CeilingStep... steps) {
    InstructionRun run = new InstructionRun(a, new TrainModels(a), new Ceiling(List.of(steps)));
    run.keep(Set.of(1));
    all = run.run(START_M, told, Map.of(target, 3));
    return run;
  }

  private void upTo(double mps) {
    told(new Trigger.Start(), new Command.Power(0));
    told(new Trigger.SpeedUpTo(mps), new Command.ShutOff());
  }

  private static Command.Brake brake(Command.Stage stage) {
    return new Command.Brake(PSI_15, stage);
  }

  @Test
  void whatWasDoneAndWhenIsThatOfThePencil() {
    upTo(2);
    told(new Trigger.After(10), brake(Command.Stage.FIRST));
    told(new Trigger.SpeedDownTo(1), new Command.Release());
    InstructionRun run = run(0, 10);
    assertThat(all).isTrue();
    assertThat(run.failures()).isEmpty();
    double shutOffM = START_M + 4 / (2 * MPS2);
    assertThat(run.actions().get(1).atM()).isCloseTo(shutOffM, within(1e-3));
    assertThat(run.actions().get(1).speedMps()).isEqualTo(2);
    assertThat(run.actions().get(1).timeS()).isCloseTo(2 / MPS2, within(1e-3));
    assertThat(run.actions()).allMatch(a -> a.approach() == 3);
    assertThat(run.actions().get(2).timeS()).isCloseTo(2 / MPS2 + 10, within(1e-3));
    PencilBraking pencil = new PencilBraking(2).downTo(PSI_15, 1);
    assertThat(run.actions().get(3).atM())
        .isCloseTo(shutOffM + 20 + pencil.distanceM(), within(1e-3));
    assertThat(run.timeS()).isCloseTo(2 / MPS2 + 10 + pencil.timeS(), within(1e-3));
    assertThat(run.energyJ()).isCloseTo(172_800 * 2, within(1.0));
    assertThat(run.movements()).isEqualTo(4);
    assertThat(run.state(1).orElseThrow().atM()).isCloseTo(shutOffM, within(1e-3));
    assertThat(run.state(1).orElseThrow().notch()).isZero();
    assertThat(run.state(2)).isEmpty();
    List<Trace.Point> points = run.points();
    assertThat(points.get(0).atM()).isEqualTo(START_M);
    assertThat(points.get(points.size() - 1).speedMps()).isCloseTo(1, within(1e-9));
  }

  /** A stand is no movement. */
  @Test
  void toStandMovesNoHandle() {
    upTo(2);
    told(new Trigger.After(1), brake(Command.Stage.FIRST));
    told(new Trigger.Standstill(), new Command.Stand());
    assertThat(run(0, 10).movements()).isEqualTo(3);
  }

  @Test
  void whatNeverComesEndsTheRun() {
    upTo(2);
    told(new Trigger.SpeedDownTo(1), brake(Command.Stage.FIRST));
    told(new Trigger.After(1), new Command.Release());
    InstructionRun run = run(0, 10);
    assertThat(all).isFalse();
    assertThat(run.actions()).hasSize(2);
    assertThat(run.failures())
        .singleElement()
        .isInstanceOfSatisfying(
            PlanFailure.NeverComes.class,
            f -> assertThat(f.trigger()).isEqualTo(new Trigger.SpeedDownTo(1)));
  }

  /**
   * Still at the speed that it is to rise to, the train is braked first: on 10 ‰ falling it slows,
   * and gathers speed again when the brake is off.
   */
  @Test
  void aSpeedToRiseToIsWaitedForWhileTheTrainIsStillFasterAndSlows() {
    upTo(2);
    told(new Trigger.After(1), new Command.Brake(EvenLine.pascals(20), Command.Stage.CHECK));
    told(new Trigger.After(4), new Command.Release());
    told(new Trigger.SpeedUpTo(1.5), brake(Command.Stage.CHECK));
    InstructionRun run = run(-10, 10);
    assertThat(run.failures()).isEmpty();
    assertThat(run.actions().get(3).speedMps()).isGreaterThan(1.5);
    assertThat(run.actions().get(4).speedMps()).isCloseTo(1.5, within(1e-6));
    double risesS = run.actions().get(4).timeS() - run.actions().get(3).timeS();
    assertThat(risesS).isGreaterThan(1);
  }

  /** A lower ceiling is met between two points; at the very point it begins; before it, not. */
  @Test
  void aFallOfTheCeilingIsMetWhereItIs() {
    upTo(2);
    told(new Trigger.AtPlace(1500), new Command.ShutOff());
    told(new Trigger.AtPlace(2000), new Command.ShutOff());
    for (double atM : new double[] {1400, 1500, 2000}) {
      assertThat(fallsTo(1.9, atM)).singleElement().satisfies(f -> isOver(f, atM));
      assertThat(fallsTo(2.0, atM)).isEmpty();
    }
    assertThat(fallsTo(1.9, 2000.01)).isEmpty();
  }

  private List<PlanFailure> fallsTo(double mps, double atM) {
    // Over it for less than the 200 m within which it is told once.
    return run(
            EvenLine.of(0),
            new CeilingStep(0, atM, 10, "line"),
            new CeilingStep(atM, atM + 1, mps, "slack"),
            new CeilingStep(atM + 1, EvenLine.LENGTH_M, 10, "line"))
        .failures();
  }

  private static void isOver(PlanFailure failure, double atM) {
    PlanFailure.OverCeiling over = failure.over().orElseThrow();
    assertThat(over.atM()).isEqualTo(atM);
    assertThat(over.speedMps()).isCloseTo(2, within(1e-6));
  }

  /** Once in 200 m: from 1.5 to 2 m/s a breach is told where it begins and 200 m behind it. */
  @Test
  void aBreachThatGoesOnIsToldAgain() {
    upTo(2);
    for (int k = 0; k < 30; k++) {
      told(new Trigger.AtPlace(1010 + 10 * k), new Command.ShutOff());
    }
    List<PlanFailure> failures = run(0, 1.5).failures();
    assertThat(failures).hasSize(2);
    double first = failures.get(0).over().orElseThrow().atM();
    double second = failures.get(1).over().orElseThrow().atM();
    assertThat(second - first).isBetween(200.0, 215.0);
  }

  /**
   * A stock whose brake answers later towards a speed: a checking application is one of those. 15
   * psi are asked at 2 m/s; the brake by percentage takes 4.264 s to a stand, and a fifth more
   * (SUBSET-026 A.3.8, A.3.9 for 80 m), while running resistance slows the train a little.
   */
  @Test
  void aCheckingApplicationUsesTheBrakeTowardsASpeed() {
    Assignment a =
        Arrangements.assignment(Direction.FORWARD, 0, Arrangements.percentage(110), Mill.policy());
    assertThat(answersS(a, Command.Stage.CHECK) - answersS(a, Command.Stage.FIRST))
        .isCloseTo(0.2 * 4.264, within(0.06));
  }

  private double answersS(Assignment a, Command.Stage stage) {
    told.clear();
    target = Stops.target(a, a.calls().get(1));
    upTo(2);
    told(new Trigger.After(1), brake(stage));
    told(new Trigger.Standstill(), new Command.Stand());
    InstructionRun run = new InstructionRun(a, new TrainModels(a), HIGH);
    run.run(Stops.markM(a, a.calls().get(0)), told, Map.of(target, 1));
    return run.actions().get(3).timeS() - run.actions().get(2).timeS();
  }

  /**
   * On level track the handle goes from off to the second notch where the hold ends: first to the
   * first one, there, and on when a notch has passed.
   */
  @Test
  void powerWhereAHoldEndsGoesUpNotchByNotch() {
    upTo(2.5);
    told(new Trigger.After(1), new Command.Hold(new Command.InNotch(0), 1, 2.5, 1200));
    told(new Trigger.AtPlace(1200), new Command.Power(1));
    InstructionRun run = run(0, 10);
    assertThat(all).isTrue();
    assertThat(run.failures()).isEmpty();
    List<Action> made = run.made();
    Action last = made.get(made.size() - 1);
    Action first = made.get(made.size() - 2);
    assertThat(List.of(first.command(), last.command()))
        .containsExactly(new Command.Power(0), new Command.Power(1));
    assertThat(first.atM()).isCloseTo(1200, within(1e-6));
    assertThat(last.timeS() - first.timeS())
        .isCloseTo(new TrainModels(EvenLine.of(0)).perNotchS(), within(1e-6));
    assertThat(run.actions()).extracting(Action::command).endsWith(new Command.Power(1));
  }

  private static final Ceiling HIGH = new Ceiling(List.of(new CeilingStep(0, 9000, 50, "line")));
}
