package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.Trigger;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Validation, with a pencil: the speed band, the brake that checks, higher ceilings. */
class FreeRunTest extends FreeRuns {
  /** 44, 96 and 100 kN for 3 s each on 172.8 t. */
  @Test
  void fromAStandPowerIsTakenNotchByNotchUpToItsSpeed() {
    FreeRun free = run(300, 0, END_M);
    assertThat(free.steps()).hasSize(5);
    assertStep(free.steps().get(0), new Trigger.Start(), power(0));
    for (int notch = 1; notch < 4; notch++) {
      assertStep(free.steps().get(notch), new Trigger.After(3), power(notch));
    }
    assertThat(free.steps().get(3).after().speedMps())
        .isCloseTo(3 * (44 + 96 + 100) / EvenLine.SEATED_T, within(1e-4));
    assertStep(free.steps().get(4), new Trigger.SpeedUpTo(68 * KMH), OFF);
    assertThat(free.over()).isTrue();
    assertThat(free.stalled()).isFalse();
    assertThat(stepper.atM()).isEqualTo(END_M);
    assertThat(stepper.speedMps()).isCloseTo(68 * KMH, within(1e-4));
  }

  @Test
  void aRunEndsWhereTheCeilingIsTooLowAndGoesOnWhereItIsNot() {
    ceiling = List.of(step(0, 2000, 20), step(2000, 6000, 10));
    FreeRun free = run(1000, 15, END_M);
    assertThat(free.over()).isTrue();
    assertThat(stepper.atM()).isCloseTo(1991.312, within(1e-6));
    assertThat(run(1000, 9.9, 1990).over()).isFalse();
    assertThat(stepper.atM()).isEqualTo(1990);
    noPowerFromM = 0;
    noPowerToM = END_M;
    run(1000, 9.9, 2500);
    assertThat(stepper.atM()).as("no faster than it is allowed").isEqualTo(2500);
    run(2100, 10.1, 2500);
    assertThat(stepper.atM()).as("too fast, but not by a fall of the ceiling").isEqualTo(2500);
  }

  /** 1 in 14 holds the train back by 116 kN, more than its 100. */
  @Test
  void whereNoNotchPullsTheTrainItIsSaidToStand() {
    line = EvenLine.of(72);
    FreeRun free = run(300, 0, END_M);
    assertThat(free.stalled()).isTrue();
    assertThat(free.over()).isFalse();
    assertThat(stepper.atM()).isEqualTo(300);
  }

  /** From 18 to 70 km/h by 0.0919 m/s², then down to 62 km/h by the 1.0 bar that the fall needs. */
  @Test
  void onAFallTheBrakeChecksTheSpeed() {
    line = EvenLine.of(-10);
    FreeRun free = run(1000, 18, END_M);
    double gathers = EvenLine.gravityMps2(10, 162, EvenLine.SEATED_T);
    assertStep(free.steps().get(0), new Trigger.SpeedUpTo(70 * KMH), check(1e5));
    assertThat(free.steps().get(0).after().atM())
        .isCloseTo(1000 + (Math.pow(70 * KMH, 2) - 324) / 2 / gathers, within(0.01));
    assertStep(free.steps().get(1), new Trigger.SpeedDownTo(62 * KMH), RELEASE);
    assertStep(free.steps().get(2), new Trigger.SpeedUpTo(70 * KMH), check(1e5));
    assertThat(free.steps()).extracting(FreeRun.Step::command).doesNotContain(power(0), OFF);
  }

  /** 70.6 km/h are over the band already: at the next place of the grid. */
  @Test
  void aTrainThatIsTooFastAlreadyIsCheckedAtAPlace() {
    line = EvenLine.of(-10);
    FreeRun free = run(1005, 19.6, END_M);
    assertStep(free.steps().get(0), new Trigger.AtPlace(1011.312), check(1e5));
    assertStep(free.steps().get(1), new Trigger.SpeedDownTo(62 * KMH), RELEASE);
    assertStep(free.steps().get(2), new Trigger.SpeedUpTo(70 * KMH), check(1e5));
    line = EvenLine.of(0);
    assertThat(run(1005, 19.6, 1400).steps()).as("gathers no speed").isEmpty();
  }

  /** 5.44 kN of 0.1 ‰ give 0.0009 m/s²: too little to matter but right under the ceiling. */
  @Test
  void aSlightGainIsCheckedRightUnderTheCeilingOnly() {
    line = EvenLine.of(-0.1);
    assertThat(run(1001.312, 19.6, 1100).steps()).isEmpty();
    assertThat(run(1001.312, 19.95, 1100).steps()).hasSize(1);
  }

  /**
   * From 33.9 km/h by 0.0919 m/s²: 55 m before the rise it is at 34 km/h, and would be 0.1 m/s
   * under its ceiling there; 40 m before it, it would not.
   */
  @Test
  void aTrainThatComesToAHigherCeilingInTimeIsNotChecked() {
    line = EvenLine.of(-10);
    ceiling = List.of(step(0, 2000, 10), step(2000, 6000, 20));
    assertStep(
        run(2001.312 - 58, 33.9 * KMH, 2100).steps().get(0),
        new Trigger.SpeedUpTo(34 * KMH),
        check(1e5));
    assertThat(run(2001.312 - 43, 33.9 * KMH, 2001).steps()).isEmpty();
  }

  /** At 34 km/h a rise 75.6 m ahead is 8 s away. On 2 ‰ it would gain no more than 0.14 m/s. */
  @Test
  void aHigherCeilingIsWaitedForNoLongerThanThePolicySays() {
    line = EvenLine.of(-2);
    ceiling = List.of(step(0, 2000, 10), step(2000, 6000, 20));
    double toThirtyFourM = (34 * 34 - 33.9 * 33.9) * KMH * KMH / 2 / 0.018387;
    assertThat(run(2001.312 - 77 - toThirtyFourM, 33.9 * KMH, 2001).steps()).hasSize(1);
    assertThat(run(2001.312 - 74 - toThirtyFourM, 33.9 * KMH, 2001).steps()).isEmpty();
  }

  /** Under 10 m/s from 991.312 m on: it is checked for that from 961.312 m on. */
  @Test
  void aTrainIsCheckedForALowerCeilingThatItComesToByCoasting() {
    line = EvenLine.of(-10);
    ceiling = List.of(step(0, 1000, 20), step(1000, 6000, 10));
    noPowerFromM = 0;
    noPowerToM = END_M;
    assertStep(run(901.312, 9.3, 1000).steps().get(0), new Trigger.AtPlace(961.312), check(1e5));
    assertThat(run(941.312, 10.1, 990).steps()).as("braked for instead").isEmpty();
  }

  /** 0.5 bar take 0.060 m/s² off, the fall gives 0.092: two minutes later half a bar more. */
  @Test
  void aCheckThatDoesNotSlowTheTrainIsMadeHeavier() {
    line = EvenLine.of(-10);
    ceiling = List.of(step(0, 6000, 30));
    TrainModels models = new TrainModels(line);
    stepper = models.plannedStepper();
    stepper.place(0, 1000, 28);
    stepper.brake(models.slowing(), 0.5e5);
    FreeRun free = run(models, END_M);
    assertStep(free.steps().get(0), new Trigger.After(120), check(1e5));
    assertThat(free.steps().get(0).after().timeS()).isEqualTo(120);
    stepper.place(0, 1000, 29);
    stepper.brake(models.slowing(), 0.8e5);
    // 11.6 psi take 0.14 off: from 29 to 26.9 m/s it takes less than that.
    assertThat(run(models, END_M).steps().get(0).command()).isEqualTo(RELEASE);
  }

  /**
   * Under 10 m/s until 2001.312 m: coasting at 30 km/h there is nothing to do before. At 68 km/h
   * the third notch still gives 0.09 m/s²: enough to hold the speed.
   */
  @Test
  void aHigherCeilingIsUsedWhereTheRearHasCleared() {
    ceiling = List.of(step(0, 2000, 10), step(2000, 6000, 20));
    FreeRun free = run(1000, 30 * KMH, END_M);
    assertStep(free.steps().get(0), new Trigger.AtPlace(2001.312), power(0));
    assertStep(free.steps().get(2), new Trigger.After(3), power(2));
    assertStep(free.steps().get(3), new Trigger.SpeedUpTo(68 * KMH), OFF);
  }

  /** At 25 km/h a rise 69.4 m ahead is 10 s away, the least time of power. */
  @Test
  void noPowerIsTakenForAMomentBeforeAHigherCeiling() {
    ceiling = List.of(step(0, 2000, 10), step(2000, 6000, 20));
    assertStep(
        run(1921.312, 25 * KMH, END_M).steps().get(0), new Trigger.AtPlace(1921.312), power(0));
    assertStep(
        run(1941.312, 25 * KMH, END_M).steps().get(0), new Trigger.AtPlace(2001.312), power(0));
    // Slower than four fifths of that it does not wait.
    assertStep(
        run(1991.312, 19.9 * KMH, END_M).steps().get(0), new Trigger.AtPlace(1991.312), power(0));
    assertStep(
        run(1991.312, 20.1 * KMH, END_M).steps().get(0), new Trigger.AtPlace(2001.312), power(0));
  }

  /** 8 ‰ take 0.0736 m/s²: from 66 down to 59 km/h. */
  @Test
  void onARisePowerIsTakenAgainAtItsSpeed() {
    line = EvenLine.of(8);
    FreeRun free = run(1000, 66 * KMH, 3000);
    assertStep(free.steps().get(0), new Trigger.SpeedDownTo(59 * KMH), power(0));
    double loses = EvenLine.gravityMps2(8, 162, EvenLine.SEATED_T);
    assertThat(free.steps().get(0).after().atM())
        .isCloseTo(1000 + (66 * 66 - 59 * 59) * KMH * KMH / 2 / loses, within(0.01));
    assertStep(free.steps().get(1), new Trigger.After(3), power(1));
  }

  /** It has power already: nothing is told of the speed at which it would be taken. */
  @Test
  void aTrainUnderTheBandTakesPowerAtTheNextPlace() {
    assertStep(run(1005, 50 * KMH, 2000).steps().get(0), new Trigger.AtPlace(1011.312), power(0));
    assertThat(run(1005, 60 * KMH, 2000).steps()).isEmpty();
  }

  /** On 2 ‰ falling it comes back into the band by itself, unless it is slow. */
  @Test
  void aTrainThatGathersSpeedByItselfTakesNoPower() {
    line = EvenLine.of(-2);
    assertThat(run(1001.312, 50 * KMH, 1100).steps()).isEmpty();
    assertStep(
        run(1001.312, 47 * KMH, 1100).steps().get(0), new Trigger.AtPlace(1001.312), power(0));
  }

  /** What was braked for holds up to its place: 39 km/h under 12 m/s. */
  @Test
  void aSpeedThatWasBrakedForHoldsUpToItsPlace() {
    capMps = 12;
    capUntilM = 2000;
    FreeRun free = run(1001.312, 8, END_M);
    assertStep(free.steps().get(0), new Trigger.AtPlace(1001.312), power(0));
    int off = commands(free).indexOf(OFF);
    assertStep(free.steps().get(off), new Trigger.SpeedUpTo(39 * KMH), OFF);
    assertThat(free.steps().get(off).after().atM()).isLessThan(2000);
    assertStep(free.steps().get(off + 1), new Trigger.AtPlace(2001.312), power(0));
  }

  @Test
  void whatTheTrainHasBeenAtIsKept() {
    line = EvenLine.of(-10);
    FreeRun free = run(1000, 15, 1500);
    assertThat(free.steps()).isEmpty();
    assertThat(free.seen().risesTo(15.5, 15.5)).isFalse();
    assertThat(free.seen().risesTo(19, 19)).isTrue();
  }

  /** The run goes on from where the handles are. */
  @Test
  void aRunIsTakenUpWithPowerOrBrakeOn() {
    TrainModels models = new TrainModels(line);
    stepper = models.plannedStepper();
    stepper.place(0, 1000, 15);
    stepper.power(3);
    assertStep(run(models, END_M).steps().get(0), new Trigger.SpeedUpTo(68 * KMH), OFF);
    stepper.place(0, 1000, 18);
    stepper.brake(models.slowing(), 1e5);
    FreeRun free = run(models, END_M);
    assertStep(free.steps().get(0), new Trigger.SpeedDownTo(62 * KMH), RELEASE);
    stepper.place(0, 1000, 61 * KMH);
    stepper.brake(models.slowing(), 1e5);
    assertStep(run(models, 1200).steps().get(0), new Trigger.AtPlace(1000), RELEASE);
  }

  /** It rests five seconds after power has come off, with the brake off too. */
  @Test
  void aTrainThatCoastsRests() {
    assertThat(run(1000, 65 * KMH, 1100).rests()).isTrue();
    assertThat(run(300, 0, 400).rests()).as("power is on").isFalse();
    FreeRun off = run(300, 0, END_M);
    double offM = off.steps().get(4).after().atM();
    assertThat(run(300, 0, offM + 5 * 68 * KMH - 1).rests()).isFalse();
    assertThat(run(300, 0, offM + 5 * 68 * KMH + 1).rests()).isTrue();
    assertThat(off.rests()).as("over").isFalse();
  }
}
