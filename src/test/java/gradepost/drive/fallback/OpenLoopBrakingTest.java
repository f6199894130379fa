package gradepost.drive.fallback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.TrainBrake;
import gradepost.plan.Command;
import gradepost.plan.Command.Stage;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.task.Target;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Validation, with a pencil: a printed braking carried out as it stands; see {@link EvenLine}. */
class OpenLoopBrakingTest {
  private static final Target TARGET = new Target.Signal("S 1", 4000);

  private static Instruction told(Trigger trigger, Command command) {
    return new Instruction(TARGET, trigger, command);
  }

  private static Instruction brake(Trigger trigger, double pascals) {
    return told(trigger, new Command.Brake(pascals, Stage.MAIN));
  }

  private static final List<Instruction> STAND =
      List.of(
          brake(new Trigger.AtPlace(990), 1e5),
          brake(new Trigger.After(3), 2e5),
          brake(new Trigger.SpeedDownTo(5), 0.6e5),
          told(new Trigger.Standstill(), new Command.Stand()));

  private static final List<Instruction> LET_GO =
      List.of(
          brake(new Trigger.AtPlace(990), 1e5),
          brake(new Trigger.After(3), 2e5),
          told(new Trigger.SpeedDownTo(13), new Command.Release()));

  private static OptionalDouble metM(
      double permille, double mps, double targetMps, List<Instruction> told) {
    TrainModels models = new TrainModels(EvenLine.of(permille));
    Stepper stepper = models.plannedStepper();
    stepper.place(40, 1000, mps);
    return new OpenLoopBraking(targetMps, told).metM(stepper, models.service());
  }

  /** Begun where the train is, 10 m late, and not where it was to be. */
  @Test
  void itStandsWhereThePencilSays() {
    PencilBraking pencil = new PencilBraking(20).after(1e5, 3).downTo(2e5, 5).downTo(0.6e5, 0);
    assertThat(metM(0, 20, 0, STAND).orElseThrow())
        .isCloseTo(1000 + pencil.distanceM(), within(1e-3));
  }

  /** 12 m/s come while the brake that was let go at 13 still empties. */
  @Test
  void aLowerSpeedIsMetWhereTheTrainIsDownToIt() {
    double release = new PencilBraking(20).after(1e5, 3).downTo(2e5, 13).distanceM();
    PencilBraking met = new PencilBraking(20).after(1e5, 3).downTo(2e5, 13).downTo(0, 12.8);
    assertThat(met.speedMps()).isEqualTo(12.8);
    assertThat(metM(0, 20, 12.8, LET_GO).orElseThrow())
        .isCloseTo(1000 + met.distanceM(), within(1e-3));
    assertThat(metM(0, 20, 13, LET_GO).orElseThrow()).isCloseTo(1000 + release, within(1e-3));
    assertThat(metM(0, 20, 14, LET_GO).orElseThrow())
        .isCloseTo(
            1000 + new PencilBraking(20).after(1e5, 3).downTo(2e5, 14).distanceM(), within(1e-3));
  }

  /** The brake is empty before 12 m/s are there, and nothing else slows the train. */
  @Test
  void whatIsLetGoTooSoonIsNeverMet() {
    assertThat(metM(0, 20, 10, LET_GO)).isEmpty();
  }

  @Test
  void aTrainThatIsSlowEnoughMeetsItWhereItIs() {
    assertThat(metM(0, 12, 12, LET_GO)).isEqualTo(OptionalDouble.of(1000));
    assertThat(metM(0, 12.01, 12, LET_GO).orElseThrow()).isGreaterThan(1000);
  }

  /** What is done at a place or as the speed rises waits until the train is down to its target. */
  @Test
  void whatIsToldForLaterIsNotDoneWhileTheTrainIsTooFast() {
    PencilBraking pencil = new PencilBraking(20).after(1e5, 3).downTo(2e5, 12);
    for (Trigger later : List.of(new Trigger.AtPlace(1050), new Trigger.SpeedUpTo(15))) {
      List<Instruction> told =
          List.of(
              brake(new Trigger.AtPlace(1000), 1e5),
              brake(new Trigger.After(3), 2e5),
              told(later, new Command.Release()));
      assertThat(metM(0, 20, 12, told).orElseThrow())
          .isCloseTo(1000 + pencil.distanceM(), within(1e-3));
    }
  }

  /** 60 ‰ give the train 0.55 m/s², and 2 bar take 0.46 off. */
  @Test
  void whatAFallBeatsIsNeverMet() {
    assertThat(metM(-60, 20, 0, STAND)).isEmpty();
    assertThat(metM(-60, 20, 12, LET_GO)).isEmpty();
  }

  /** Half of the force takes the half off at each moment. */
  @Test
  void aBrakeThatDiffersIsUsedAsItIs() {
    TrainModels models = new TrainModels(EvenLine.of(0));
    TrainBrake planned = models.service();
    double[] half = planned.gainNPerPa().clone();
    for (int i = 0; i < half.length; i++) {
      half[i] /= 2;
    }
    Stepper stepper = models.plannedStepper();
    stepper.place(0, 1000, 20);
    double metM =
        new OpenLoopBraking(0, List.of(brake(new Trigger.AtPlace(1000), EvenLine.pascals(50))))
            .metM(stepper, planned.with(half, planned.applyPaPerS()))
            .orElseThrow();
    double needs = EvenLine.brakedM(20, 0, 0.5, 2.3, 0.85 / 2, 0);
    assertThat(metM).isCloseTo(1000 + needs, within(1e-3));
  }
}
