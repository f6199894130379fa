package gradepost.drive.brake;

import static gradepost.drive.EvenLine.pascals;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Changed;
import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.policy.BrakePractice;
import gradepost.policy.Technique;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Acceleration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** By hand: the policy's technique turned to one target, on a gauge in bar and in km/h. */
class BrakingTest {
  private static final double KMH = 1 / 3.6;
  private static final Target STAND = new Target.Signal("S 1", 4000);
  private static final Target BOARD =
      new Target.Reduction(
          "curve",
          Target.Reduction.Kind.PERMANENT,
          "curve",
          4000,
          12,
          25,
          Optional.empty(),
          Optional.empty());

  private static Braking of(double permille, Target target) {
    Assignment a = EvenLine.of(permille);
    return Braking.of(a, new TrainModels(a), target);
  }

  private static void assertAll(double[] actual, double... expected) {
    assertThat(actual).hasSize(expected.length);
    for (int i = 0; i < expected.length; i++) {
      assertThat(actual[i]).as("of " + i).isCloseTo(expected[i], within(1e-6 * expected[i] + 1e-9));
    }
  }

  /**
   * 15 psi for 3 s, 28 psi, 14 psi from 12 mph (19.3 km/h) and 6 psi from 4 mph (6.4 km/h) on; but
   * 4 + 0.12 · 46 / 0.85 = 10.5 psi, 0.72 bar, to take the usual 0.12 m/s² off.
   */
  @Test
  void toAStand() {
    Braking b = of(0, STAND);
    assertThat(b.aimMps()).isZero();
    assertThat(b.firstPa()).isCloseTo(1.0e5, within(1e-6));
    assertThat(b.firstHeldS()).isEqualTo(3);
    assertThat(b.mainPa()).isCloseTo(pascals(28), within(1e-6));
    assertAll(b.easeAtMps(), 19 * KMH, 6 * KMH);
    assertAll(b.easePa(), 1.0e5, 0.8e5);
    assertThat(b.staysOn()).isFalse();
    assertThat(b.releases()).isFalse();
  }

  /** 10 ‰ more take 0.092 m/s²: 4 + 0.212 · 46 / 0.85 = 15.47 psi, 1.07 bar. */
  @Test
  void onAFallTheEasesAndTheFirstApplicationStillSlowTheTrain() {
    Braking b = of(-10, STAND);
    assertAll(b.easePa(), 1.1e5, 1.1e5);
    assertThat(b.firstPa()).isCloseTo(1.1e5, within(1e-6));
    assertThat(b.mainPa()).isCloseTo(pascals(28), within(1e-6));
    assertThat(of(-40, STAND).mainPa()).isEqualTo(of(-40, STAND).firstPa());
  }

  /**
   * The last ease is to slow the train by 0.18 m/s²: 4 + 0.18 · 46 / 0.85 = 13.74 psi, 0.95 bar; by
   * 0.15: 12.12 psi, 0.84 bar; by 0.1 m/s², 6 psi and what keeps it from rolling on no longer
   * count: 9.41 psi, 0.65 bar. By 0.3 m/s² it would be 20.2 psi, 1.4 bar, and no ease: what is on
   * stays on.
   */
  @ParameterizedTest
  @CsvSource({"0.18, 1.0e5", "0.15, 0.9e5", "0.1, 0.7e5", "0.3, 1.0e5"})
  void theLastEaseSlowsTheTrainAsThePolicySays(double mps2, double pascals) {
    Assignment level = EvenLine.of(0);
    Technique usual = level.policy().stopping();
    Technique.Ease last = usual.eases().get(1);
    Technique asked =
        new Technique(
            usual.first(),
            usual.firstHeld(),
            usual.main(),
            List.of(
                usual.eases().get(0),
                new Technique.Ease(
                    last.aboveTarget(), last.to(), Optional.of(new Acceleration(mps2)))));
    Assignment a = level.with(Changed.in(level.policy(), "stopping", asked));
    assertAll(Braking.of(a, new TrainModels(a), STAND).easePa(), 1.0e5, pascals);
  }

  /**
   * 2 mph under 12 m/s are 40 km/h; eased to 12 psi 5 mph above (48 km/h), released 1 mph above (42
   * km/h).
   */
  @Test
  void toALowerSpeed() {
    Braking b = of(0, BOARD);
    assertThat(b.aimMps()).isCloseTo(40 * KMH, within(1e-9));
    assertAll(b.easeAtMps(), 48 * KMH, 42 * KMH);
    assertAll(b.easePa(), 0.8e5, 0);
    assertThat(b.releases()).isTrue();
    assertThat(b.releasedAtMps()).isCloseTo(42 * KMH, within(1e-9));
  }

  /**
   * Of gravity 162 / 172.8 reach the train: on 2 ‰ it gathers 0.018, on 5 ‰ 0.046, on 7 ‰ 0.064
   * m/s². Above 0.02 it is braked as far as a checking application goes, 4 mph under (37 km/h);
   * above 0.06 the brake stays on.
   */
  @Test
  void whereTheTrainGathersSpeedBehindTheBoardItIsBrakedFurtherOrTheBrakeStaysOn() {
    assertThat(of(-2, BOARD).aimMps()).isCloseTo(40 * KMH, within(1e-9));
    assertThat(of(-2, BOARD).staysOn()).isFalse();
    assertThat(of(-5, BOARD).aimMps()).isCloseTo(37 * KMH, within(1e-9));
    assertThat(of(-5, BOARD).staysOn()).isFalse();
    Braking on = of(-7, BOARD);
    assertThat(on.aimMps()).isCloseTo(40 * KMH, within(1e-9));
    assertThat(on.staysOn()).isTrue();
    assertThat(on.releases()).isFalse();
    assertThat(on.easePa()).hasSize(1).doesNotContain(0);
  }

  /**
   * The steeper of what is at the target and 40 m before it counts: 20 ‰ take 0.184 m/s², for which
   * 4 + 0.304 · 46 / 0.85 = 20.4 psi are needed, 1.41 bar; the level needs 0.72.
   */
  @Test
  void anEaseAllowsForTheFallAtTheTargetAndShortlyBeforeIt() {
    assertAll(onBroken(-20, 3980, 0).easePa(), 1.5e5, 1.5e5);
    assertAll(onBroken(0, 3900, -20).easePa(), 1.5e5, 1.5e5);
    assertAll(onBroken(-20, 3870, 0).easePa(), 1.0e5, 0.8e5);
    assertAll(onBroken(0, 4010, -20).easePa(), 1.0e5, 0.8e5);
  }

  /** The first application 40 m before it, and 40 m before that. */
  @Test
  void theFirstApplicationAllowsForTheFallBeforeTheTarget() {
    assertThat(onBroken(-20, 3940, 0).firstPa()).isCloseTo(1.5e5, within(1e-6));
    assertThat(onBroken(-20, 3840, 0).firstPa()).isCloseTo(1.0e5, within(1e-6));
    assertThat(onBroken(0, 4000, -20).firstPa()).isCloseTo(1.0e5, within(1e-6));
  }

  private static Braking onBroken(double before, double atM, double behind) {
    Assignment a = EvenLine.broken(before, atM, behind);
    return Braking.of(a, new TrainModels(a), STAND);
  }

  /** What it gathers is looked at 8 s behind the board, at 12 m/s 96 m, and 100 m at most. */
  @Test
  void whetherTheBrakeStaysOnIsToldByTheTrackBehindTheBoard() {
    assertThat(behind(4015, BOARD).staysOn()).isTrue();
    assertThat(behind(4100, BOARD).staysOn()).isFalse();
    Target slow = new Target.TerminalStep("step", 4000, 5, 10);
    assertThat(behind(3960, slow).staysOn()).isTrue();
    assertThat(behind(4041, slow).staysOn()).isFalse();
  }

  /** The train of 80 m is wholly on the fall 80 m behind where it begins. */
  private static Braking behind(double fallsFromM, Target target) {
    Assignment a = EvenLine.broken(0, fallsFromM, -10);
    return Braking.of(a, new TrainModels(a), target);
  }

  /** Seven tenths of a low one: of 2 m/s 1.4, which is 5 km/h, and not 2 m/s less 2 mph. */
  @Test
  void aLowSpeedIsNotBrakedForTooFar() {
    Target low = new Target.TerminalStep("step", 4000, 2, 10);
    assertThat(of(0, low).aimMps()).isCloseTo(5 * KMH, within(1e-9));
  }

  @Test
  void aReleaseFurtherDownMovesTheAimAsFar() {
    Assignment a = EvenLine.of(0);
    TrainModels models = new TrainModels(a);
    assertThat(Braking.downTo(a, models, BOARD, 41.5 * KMH).aimMps())
        .isCloseTo(40 * KMH, within(1e-9));
    assertThat(Braking.downTo(a, models, BOARD, 39 * KMH).aimMps())
        .isCloseTo(37 * KMH, within(1e-9));
    // Half of 12 m/s is 21.6 km/h.
    assertThat(Braking.downTo(a, models, BOARD, 10 * KMH).aimMps())
        .isCloseTo(22 * KMH, within(1e-9));
    assertThat(Braking.downTo(a, models, STAND, 1).aimMps()).isZero();
  }

  private static Braking made() {
    return new Braking(
        of(0, STAND).rig(),
        0,
        1e5,
        3,
        0,
        2e5,
        new double[] {6, 2},
        new double[] {1e5, 0.5e5},
        BrakePractice.USUAL.lastEaseAlone(),
        false);
  }

  @Test
  void aLighterMainApplicationIsNoLighterThanTheFirst() {
    assertThat(made().withMain(0.9e5).firstPa()).isEqualTo(0.9e5);
    assertThat(made().withMain(0.9e5).mainPa()).isEqualTo(0.9e5);
    assertThat(made().withMain(1.5e5).firstPa()).isEqualTo(1e5);
  }

  /** One that checked the speed stays on for what is added. */
  @Test
  void aLongerFirstApplicationIsLongerToo() {
    Braking longer = made().withFirstHeld(5);
    assertThat(longer.firstHeldS()).isEqualTo(5);
    assertThat(longer.onHeldS()).isEqualTo(2);
    assertThat(longer.withFirstHeld(2).onHeldS()).isZero();
    assertThat(longer.withFirstHeld(6).onHeldS()).isEqualTo(3);
  }

  /** Not below one and a half of the next, nor below half of what it was: 3 m/s, and 1 m/s. */
  @Test
  void theSpeedOfAnEaseMovesByWholeUnitsAndNotTooFar() {
    assertAll(made().withEaseMoved(0, 2, 1).easeAtMps(), 8, 2);
    assertAll(made().withEaseMoved(0, -2, 1).easeAtMps(), 4, 2);
    assertAll(made().withEaseMoved(0, -5, 1).easeAtMps(), 3, 2);
    assertAll(made().withEaseMoved(1, -5, 1).easeAtMps(), 6, 1);
    assertAll(made().withEaseMoved(1, -5, 0.8).easeAtMps(), 6, 1.6);
  }

  /** Up to the main application's, and to that of the ease before. */
  @Test
  void anEaseMayKeepMorePressure() {
    assertAll(made().withEasePressed(0, 0.3e5).easePa(), 1.3e5, 0.5e5);
    assertAll(made().withEasePressed(0, 3e5).easePa(), 2e5, 0.5e5);
    assertAll(made().withEasePressed(1, 0.3e5).easePa(), 1e5, 0.8e5);
    assertAll(made().withEasePressed(1, 3e5).easePa(), 1e5, 1e5);
  }

  /** It answers after 0.3 s and empties by 15 psi a second. */
  @Test
  void aBrakeThatIsLetGoIsOffWhenItIsEmpty() {
    assertThat(made().emptyS(pascals(30))).isCloseTo(2.3, within(1e-9));
  }

  @Test
  void whereTheBrakeIsOffIsWorkedOutWithoutMovingTheTrain() {
    Assignment a = EvenLine.of(0);
    TrainModels models = new TrainModels(a);
    Stepper stepper = models.plannedStepper();
    stepper.place(0, 1000, 20);
    stepper.brake(models.service(), 1e5);
    stepper.advance(new StopConditions().time(5));
    double emptyS = 0.3 + 1e5 / pascals(15);
    double offM = new PencilBraking(20).after(1e5, 5).downTo(1e5, 15).after(0, emptyS).distanceM();
    assertThat(made().offM(stepper, 15)).isCloseTo(1000 + offM, within(1e-3));
    assertThat(stepper.timeS()).isEqualTo(5);
    double atOnceM = new PencilBraking(20).after(1e5, 5).after(0, emptyS).distanceM();
    assertThat(made().offM(stepper, 25)).isCloseTo(1000 + atOnceM, within(1e-3));
  }

  /** No brake is kept on for two minutes: 1.0 bar takes 20 m/s off in less, 0.3 bar does not. */
  @Test
  void aSpeedThatDoesNotComeIsNotWaitedForLongerThanTwoMinutes() {
    Assignment a = EvenLine.of(0);
    TrainModels models = new TrainModels(a);
    Stepper stepper = models.plannedStepper();
    stepper.place(0, 1000, 20);
    stepper.brake(models.service(), 0.3e5);
    double after = new PencilBraking(20).after(0.3e5, 120).distanceM();
    assertThat(made().offM(stepper, 10)).isCloseTo(1000 + after, within(1e-3));
  }
}
