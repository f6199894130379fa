package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.plan.Command;
import gradepost.plan.Command.Stage;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.policy.BrakePractice;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: how a train goes on that was braked before on another rail; see {@link
 * EvenLine}. It comes with 20 m/s and is braked at 3000 m to some 12 m/s.
 */
class RailRunTest {
  private static final double AT_M = 3000;
  private static final double END_M = 5000;
  private static final Target BOARD = new Target.TerminalStep("board", 3700, 12, 25);
  private static final Target STAND = new Target.Signal("S 1", END_M);

  private final Assignment assignment = EvenLine.of(0);
  private final TrainModels models = new TrainModels(assignment);
  private final Stepper planned = models.plannedStepper();
  private final Stepper look = models.plannedStepper();

  private static ApproachSolution piece(Target target, RunStates line, List<Instruction> told) {
    return new ApproachSolution(
        target,
        1000,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        20,
        Optional.empty(),
        line,
        told,
        END_M,
        true);
  }

  private RailLine braked(boolean staysOn, List<Instruction> own, List<Instruction> next) {
    planned.place(0, 1000, 20);
    return brakedOn(staysOn, own, next);
  }

  private RailLine brakedOn(boolean staysOn, List<Instruction> own, List<Instruction> next) {
    RunStates line = new RunStates();
    line.add(planned.save());
    Braking braking =
        new Braking(
            models.service(),
            12,
            1e5,
            3,
            0,
            2e5,
            staysOn ? new double[0] : new double[] {12.5},
            staysOn ? new double[0] : new double[] {0},
            BrakePractice.USUAL.lastEaseAlone(),
            staysOn);
    PlannedPoint point =
        new PlannedPoint(Optional.of(AT_M), 2e5, braking, Optional.of(braking), List.of());
    return new RailRun(models, assignment.policy().plannedAdhesion())
        .braked(piece(BOARD, line, own), planned, point, piece(STAND, line, next));
  }

  private double mpsAt(RailLine line, double atM) {
    line.pickUp(look, atM);
    assertThat(look.atM()).isCloseTo(atM, within(1e-6));
    return look.speedMps();
  }

  private static PencilBraking letGo() {
    return new PencilBraking(20)
        .after(1e5, 3)
        .downTo(2e5, 12.5)
        .after(0, 0.3 + 2e5 / EvenLine.pascals(15));
  }

  private static Instruction told(Trigger trigger, Command command) {
    return new Instruction(STAND, trigger, command);
  }

  @Test
  void upToTheBrakingItIsTheRunBeforeAndThenAsItWasBraked() {
    RailLine line = braked(false, List.of(), List.of());
    assertThat(line.startM()).isEqualTo(1000);
    assertThat(mpsAt(line, 2000)).isCloseTo(20, within(1e-9));
    assertThat(mpsAt(line, AT_M)).isCloseTo(20, within(1e-9));
    double firstM = new PencilBraking(20).after(1e5, 3).distanceM();
    assertThat(mpsAt(line, AT_M + firstM))
        .isCloseTo(new PencilBraking(20).after(1e5, 3).speedMps(), within(1e-4));
    assertThat(mpsAt(line, AT_M + letGo().distanceM())).isCloseTo(letGo().speedMps(), within(1e-4));
    assertThat(mpsAt(line, END_M - 1)).isCloseTo(letGo().speedMps(), within(1e-4));
  }

  /** In the first notch 44 kN on 172.8 t, up to 6 mph only; 12 m/s are above that. */
  @Test
  void whatThePlanDoesNextIsDoneByItsOwnTriggersUpToTheNextBraking() {
    double checksM = 4200;
    List<Instruction> next =
        List.of(
            told(new Trigger.AtPlace(checksM), new Command.Brake(1e5, Stage.CHECK)),
            told(new Trigger.SpeedDownTo(11), new Command.Release()),
            told(new Trigger.AtPlace(4500), new Command.Brake(2e5, Stage.FIRST)));
    RailLine line = braked(false, List.of(), next);
    double comes = letGo().speedMps();
    assertThat(mpsAt(line, checksM - 1)).isCloseTo(comes, within(1e-4));
    PencilBraking checked =
        new PencilBraking(comes).downTo(1e5, 11).after(0, 0.3 + 1e5 / EvenLine.pascals(15));
    assertThat(mpsAt(line, 4499)).isCloseTo(checked.speedMps(), within(1e-3));
    assertThat(mpsAt(line, END_M)).isCloseTo(checked.speedMps(), within(1e-3));
  }

  @Test
  void aTimeIsCountedFromWhatWasDoneBefore() {
    List<Instruction> next =
        List.of(told(new Trigger.After(10), new Command.Brake(1e5, Stage.CHECK)));
    RailLine line = braked(false, List.of(), next);
    double comes = letGo().speedMps();
    double onM = AT_M + letGo().distanceM() + 10 * comes;
    PencilBraking checked = new PencilBraking(comes).after(1e5, 10);
    assertThat(mpsAt(line, onM)).isCloseTo(comes, within(1e-4));
    assertThat(mpsAt(line, onM + checked.distanceM())).isCloseTo(checked.speedMps(), within(1e-3));
  }

  /** It comes off on the page of its own board: the last release there. */
  @Test
  void aBrakeThatStaysOnComesOffWhereItsPageSays() {
    List<Instruction> own =
        List.of(
            told(new Trigger.SpeedDownTo(19), new Command.Release()),
            told(new Trigger.AtPlace(AT_M), new Command.Brake(1e5, Stage.FIRST)),
            told(new Trigger.SpeedDownTo(10), new Command.Release()));
    RailLine line = braked(true, own, List.of());
    PencilBraking pencil =
        new PencilBraking(20)
            .after(1e5, 3)
            .downTo(2e5, 10)
            .after(0, 0.3 + 2e5 / EvenLine.pascals(15));
    assertThat(mpsAt(line, END_M)).isCloseTo(pencil.speedMps(), within(1e-3));
  }

  @Test
  void powerIsOffWhereTheBrakeGoesOn() {
    planned.place(0, 1000, 16);
    planned.power(3);
    RailLine line = brakedOn(false, List.of(), List.of());
    double mps = mpsAt(line, AT_M - 0.01);
    assertThat(mps).isGreaterThan(17);
    PencilBraking pencil =
        new PencilBraking(mps)
            .after(1e5, 3)
            .downTo(2e5, 12.5)
            .after(0, 0.3 + 2e5 / EvenLine.pascals(15));
    assertThat(mpsAt(line, AT_M + pencil.distanceM())).isCloseTo(pencil.speedMps(), within(1e-3));
    assertThat(mpsAt(line, END_M)).isCloseTo(pencil.speedMps(), within(1e-3));
  }

  /** A speed that never comes: the train rolls to the end, and nothing more is done. */
  @Test
  void whatDoesNotComeBeforeTheEndIsNotDone() {
    List<Instruction> next =
        List.of(
            told(new Trigger.SpeedDownTo(5), new Command.Brake(1e5, Stage.CHECK)),
            told(new Trigger.After(0), new Command.Brake(1e5, Stage.CHECK)));
    RailLine line = braked(false, List.of(), next);
    assertThat(mpsAt(line, END_M + 100)).isCloseTo(letGo().speedMps(), within(1e-4));
  }

  /** In the highest notch 100 kN on 172.8 t, up to 27 mph (12.07 m/s). */
  @Test
  void powerIsTakenAndTakenOffAsThePlanSays() {
    double comes = letGo().speedMps();
    assertThat(comes).isLessThan(12);
    List<Instruction> next =
        List.of(
            told(new Trigger.AtPlace(4200), new Command.Power(3)),
            told(new Trigger.SpeedUpTo(12.05), new Command.ShutOff()));
    RailLine line = braked(false, List.of(), next);
    double gains = 100 / EvenLine.SEATED_T;
    double on = (12.05 * 12.05 - comes * comes) / (2 * gains);
    assertThat(mpsAt(line, 4200 + on / 2))
        .isCloseTo(Math.sqrt(comes * comes + gains * on), within(1e-3));
    assertThat(mpsAt(line, END_M)).isCloseTo(12.05, within(1e-6));
  }
}
