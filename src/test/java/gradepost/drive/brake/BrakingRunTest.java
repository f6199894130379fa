package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.Command;
import gradepost.plan.Command.Stage;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.policy.BrakePractice;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: what is done, by what it is given, and where it ends; see {@link
 * EvenLine}.
 */
class BrakingRunTest {
  private static final double NEAR_M = 1e-3;
  private static final Target TARGET = new Target.Signal("S 1", 4000);
  private static final Trigger HERE = new Trigger.AtPlace(1000);
  private static final double FIRST = 1e5;
  private static final double MAIN = 2e5;
  private static final double LAST = 0.6e5;

  private final List<Instruction> out = new ArrayList<>();
  private TrainModels models = new TrainModels(EvenLine.of(0));

  /** Eased to 1.2 bar at 5 m/s and to 0.6 bar at 2 m/s. */
  private Braking toAStand() {
    return new Braking(
        models.service(),
        0,
        FIRST,
        3,
        0,
        MAIN,
        new double[] {5, 2},
        new double[] {1.2e5, LAST},
        BrakePractice.USUAL.lastEaseAlone(),
        false);
  }

  /** Released at 12 m/s. */
  private Braking toASpeed(boolean staysOn) {
    return new Braking(
        models.service(),
        11,
        FIRST,
        3,
        0,
        MAIN,
        staysOn ? new double[0] : new double[] {12},
        staysOn ? new double[0] : new double[] {0},
        BrakePractice.USUAL.lastEaseAlone(),
        staysOn);
  }

  private Stepper at(double mps) {
    Stepper stepper = models.plannedStepper();
    stepper.place(0, 1000, mps);
    return stepper;
  }

  private Braking.Outcome run(Braking braking, Stepper stepper) {
    out.clear();
    return braking.run(stepper, HERE, TARGET, out);
  }

  private Instruction told(Trigger trigger, Command command) {
    return new Instruction(TARGET, trigger, command);
  }

  private static Command brake(double pascals, Stage stage) {
    return new Command.Brake(pascals, stage);
  }

  private static final Command STAND = new Command.Stand();

  @Test
  void toAStandInFourStages() {
    Braking.Outcome outcome = run(toAStand(), at(20));
    PencilBraking pencil =
        new PencilBraking(20).after(FIRST, 3).downTo(MAIN, 5).downTo(1.2e5, 2).downTo(LAST, 0);
    assertThat(outcome.held()).isTrue();
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(outcome.endS()).isCloseTo(pencil.timeS(), within(1e-3));
    assertThat(outcome.endMps()).isZero();
    assertThat(outcome.shortOf(2000)).isCloseTo(1000 - pencil.distanceM(), within(NEAR_M));
    assertThat(out)
        .containsExactly(
            told(HERE, brake(FIRST, Stage.FIRST)),
            told(new Trigger.After(3), brake(MAIN, Stage.MAIN)),
            told(new Trigger.SpeedDownTo(5), brake(1.2e5, Stage.EASE)),
            told(new Trigger.SpeedDownTo(2), brake(LAST, Stage.EASE)),
            told(new Trigger.Standstill(), STAND));
  }

  /** It ends when the brake is empty: after 0.3 s, by 15 psi a second. */
  @Test
  void toASpeedTheBrakeIsLetGoBefore() {
    Braking braking = toASpeed(false);
    Braking.Outcome outcome = run(braking, at(20));
    double emptyS = 0.3 + MAIN / EvenLine.pascals(15);
    PencilBraking pencil = new PencilBraking(20).after(FIRST, 3).downTo(MAIN, 12).after(0, emptyS);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(outcome.endMps()).isCloseTo(pencil.speedMps(), within(1e-4));
    assertThat(outcome.endS()).isCloseTo(pencil.timeS(), within(1e-3));
    assertThat(out)
        .containsExactly(
            told(HERE, brake(FIRST, Stage.FIRST)),
            told(new Trigger.After(3), brake(MAIN, Stage.MAIN)),
            told(new Trigger.SpeedDownTo(12), new Command.Release()));
  }

  @Test
  void aBrakeThatStaysOnIsThereWhenTheSpeedIs() {
    Braking.Outcome outcome = run(toASpeed(true), at(20));
    PencilBraking pencil = new PencilBraking(20).after(FIRST, 3).downTo(MAIN, 11);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(outcome.endMps()).isCloseTo(11, within(1e-9));
    assertThat(outcome.held()).isTrue();
    assertThat(out).hasSize(2);
  }

  @Test
  void whereTheAimIsMetAlreadyNothingIsDone() {
    assertThat(run(toASpeed(false), at(11.9)).held()).isTrue();
    assertThat(out).isEmpty();
    assertThat(run(toASpeed(false), at(12)).endM()).isEqualTo(1000);
    assertThat(out).isEmpty();
    assertThat(run(toASpeed(true), at(11)).endM()).isEqualTo(1000);
    assertThat(out).isEmpty();
    run(toASpeed(true), at(11.01));
    assertThat(out).isNotEmpty();
    assertThat(run(toAStand(), at(0)).endM()).isEqualTo(1000);
    assertThat(out).containsExactly(told(new Trigger.Standstill(), STAND));
  }

  /** Slower than where the main application is eased, it is not needed. */
  @Test
  void aSlowTrainIsStoppedByTheFirstApplication() {
    Braking.Outcome outcome = run(toAStand(), at(5));
    PencilBraking pencil = new PencilBraking(5).after(FIRST, 3).downTo(FIRST, 2).downTo(LAST, 0);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(out)
        .containsExactly(
            told(HERE, brake(FIRST, Stage.FIRST)),
            told(new Trigger.SpeedDownTo(2), brake(LAST, Stage.EASE)),
            told(new Trigger.Standstill(), STAND));
  }

  /** Up to 1.3 times the speed of the last ease its pressure will do. */
  @Test
  void aTrainThatCreepsIsStoppedByTheLightPressureAlone() {
    Braking.Outcome outcome = run(toAStand(), at(2.6));
    PencilBraking pencil = new PencilBraking(2.6).downTo(LAST, 0);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(out)
        .containsExactly(
            told(HERE, brake(LAST, Stage.FIRST)), told(new Trigger.Standstill(), STAND));
    run(toAStand(), at(2.61));
    assertThat(out.get(0)).isEqualTo(told(HERE, brake(FIRST, Stage.FIRST)));
  }

  /** An ease at more than 0.85 of the speed at which braking begins is left out. */
  @Test
  void anEaseSoonAfterTheBeginningIsLeftOut() {
    Braking none =
        new Braking(
            models.service(),
            0,
            FIRST,
            1,
            0,
            MAIN,
            new double[] {5},
            new double[] {LAST},
            BrakePractice.USUAL.lastEaseAlone(),
            false);
    run(none, at(5.88));
    assertThat(out).noneMatch(i -> i.command().equals(brake(LAST, Stage.EASE)));
    run(none, at(5.89));
    assertThat(out).anyMatch(i -> i.command().equals(brake(LAST, Stage.EASE)));
  }

  /** Held for 3 s, but no longer than down to the speed of the last ease. */
  @Test
  void theFirstApplicationIsNotHeldBelowTheSpeedOfTheLastEase() {
    Braking.Outcome outcome = run(toASpeed(false).withMain(FIRST), at(12.2));
    double emptyS = 0.3 + FIRST / EvenLine.pascals(15);
    PencilBraking pencil = new PencilBraking(12.2).downTo(FIRST, 12).after(0, emptyS);
    assertThat(pencil.timeS()).isLessThan(3 + emptyS);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    Braking stand =
        new Braking(
            models.service(),
            0,
            FIRST,
            20,
            0,
            MAIN,
            new double[] {3},
            new double[] {LAST},
            BrakePractice.USUAL.lastEaseAlone(),
            false);
    PencilBraking slows = new PencilBraking(5).downTo(FIRST, 3).downTo(LAST, 0);
    assertThat(run(stand, at(5)).endM()).isCloseTo(1000 + slows.distanceM(), within(NEAR_M));
  }

  private Stepper checked(double pascals) {
    Stepper stepper = at(20);
    stepper.brake(models.service(), pascals);
    stepper.advance(new StopConditions().time(5));
    return stepper;
  }

  @Test
  void fromACheckingApplicationTheMainOneFollowsAtOnce() {
    Braking.Outcome outcome = run(toAStand(), checked(FIRST));
    PencilBraking pencil =
        new PencilBraking(20).after(FIRST, 5).downTo(MAIN, 5).downTo(1.2e5, 2).downTo(LAST, 0);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(out.get(0)).isEqualTo(told(HERE, brake(MAIN, Stage.MAIN)));
  }

  /** A lighter one is made the first application, and held as long. */
  @Test
  void fromALighterCheckingApplicationTheFirstOneIsMade() {
    Braking.Outcome outcome = run(toAStand(), checked(0.7e5));
    PencilBraking pencil =
        new PencilBraking(20)
            .after(0.7e5, 5)
            .after(FIRST, 3)
            .downTo(MAIN, 5)
            .downTo(1.2e5, 2)
            .downTo(LAST, 0);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(out.get(0)).isEqualTo(told(HERE, brake(FIRST, Stage.FIRST)));
  }

  @Test
  void oneThatIsToStayOnIsSaidAndHeldAsLong() {
    Braking held = toAStand().withFirstHeld(7);
    assertThat(held.onHeldS()).isEqualTo(4);
    Braking.Outcome outcome = run(held, checked(FIRST));
    PencilBraking pencil =
        new PencilBraking(20).after(FIRST, 9).downTo(MAIN, 5).downTo(1.2e5, 2).downTo(LAST, 0);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(out.subList(0, 2))
        .containsExactly(
            told(HERE, brake(FIRST, Stage.FIRST)),
            told(new Trigger.After(4), brake(MAIN, Stage.MAIN)));
  }

  @Test
  void oneThatIsHeavyEnoughStaysOn() {
    Braking.Outcome outcome = run(toAStand(), checked(MAIN));
    PencilBraking pencil = new PencilBraking(20).downTo(MAIN, 5).downTo(1.2e5, 2).downTo(LAST, 0);
    assertThat(outcome.endM()).isCloseTo(1000 + pencil.distanceM(), within(NEAR_M));
    assertThat(out.get(0)).isEqualTo(told(HERE, brake(MAIN, Stage.FIRST)));
    assertThat(out.get(1)).isEqualTo(told(new Trigger.SpeedDownTo(5), brake(1.2e5, Stage.EASE)));
  }

  /** 40 ‰ give the train 0.37 m/s², and 2 bar take 0.46 off: it slows, but not at 1.5 bar. */
  @Test
  void whatAFallBeatsIsNotHeld() {
    models = new TrainModels(EvenLine.of(-40));
    for (Braking braking : List.of(toAStand(), toASpeed(true))) {
      Braking.Outcome outcome = run(braking.withMain(1.5e5), at(20));
      assertThat(outcome.held()).isFalse();
      assertThat(outcome.shortOf(4000)).isEqualTo(-1e6);
      assertThat(out).noneMatch(i -> i.command().isStand());
    }
    assertThat(run(toASpeed(true), at(20)).held()).isTrue();
  }
}
