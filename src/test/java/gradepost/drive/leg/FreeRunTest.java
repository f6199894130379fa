package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Changed;
import gradepost.drive.EvenLine;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.ControlProfile;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.motion.Stepper;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import gradepost.route.RailGap;
import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.stock.Notch;
import gradepost.stock.Traction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.units.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: a run by the rules of driving on {@link EvenLine}, where a train that
 * coasts on the level keeps its speed. Places of the print grid are at 1.312 m and every 10 m.
 *
 * <p>Under 20 m/s, 72 km/h, power comes off at 68 and is taken again at 59 km/h; the brake checks
 * the speed from 70 down to 62 km/h. Under 10 m/s these are 32, 25, 34 and 27 km/h.
 */
class FreeRunTest {
  private static final double KMH = 1 / 3.6;
  private static final double END_M = 5500;
  private static final double NEVER = Double.POSITIVE_INFINITY;

  private Assignment line = EvenLine.of(0);
  private List<CeilingStep> ceiling = List.of(step(0, 6000, 20));
  private double capMps = NEVER;
  private double capUntilM;
  private double noPowerFromM = NEVER;
  private double noPowerToM = NEVER;
  private ControlProfile profile = ControlProfile.NONE;
  private Stepper stepper = new TrainModels(line).plannedStepper();

  private static CeilingStep step(double fromM, double toM, double mps) {
    return new CeilingStep(fromM, toM, mps, "line");
  }

  /** From a stand, or coasting at a speed. */
  private FreeRun run(double fromM, double mps, double toM) {
    TrainModels models = new TrainModels(line);
    stepper = models.plannedStepper();
    stepper.place(0, fromM, mps);
    return run(models, toM);
  }

  private FreeRun run(TrainModels models, double toM) {
    DriverRules rules =
        new DriverRules(
            line,
            models,
            new Ceiling(ceiling),
            stepper.atM(),
            DrivingStrategy.of(line.policy().run()).by(profile));
    FreeRun free =
        new FreeRun(
            rules, line, models, stepper, END_M, capMps, capUntilM, noPowerFromM, noPowerToM);
    SpeedsSeen seen = new SpeedsSeen();
    seen.from(stepper.speedMps());
    free.start(seen);
    free.run(toM);
    return free;
  }

  private static void assertStep(FreeRun.Step step, Trigger trigger, Command command) {
    assertThat(step.command()).isEqualTo(command);
    assertThat(kind(step.trigger())).isEqualTo(kind(trigger));
    assertThat(value(step.trigger())).isCloseTo(value(trigger), within(1e-6));
    assertThat(step.after().notch())
        .as("handle, after " + command)
        .isEqualTo(command.power().map(Command.Power::notch).orElse(-1));
    assertThat(step.after().demandPa())
        .as("brake, after " + command)
        .isEqualTo(command instanceof Command.Brake brake ? brake.pressurePa() : 0);
  }

  private static String kind(Trigger trigger) {
    return trigger.getClass().getSimpleName();
  }

  private static double value(Trigger trigger) {
    return trigger.match(
        Trigger.AtPlace::atM,
        Trigger.SpeedUpTo::speedMps,
        Trigger.SpeedDownTo::speedMps,
        Trigger.After::seconds,
        start -> 0.0,
        stand -> 0.0);
  }

  private static Command power(int notch) {
    return new Command.Power(notch);
  }

  private static Command check(double pascals) {
    return new Command.Brake(pascals, Command.Stage.CHECK);
  }

  private static final Command OFF = new Command.ShutOff();
  private static final Command RELEASE = new Command.Release();

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

  private static List<Command> commands(FreeRun free) {
    return free.steps().stream().map(FreeRun.Step::command).toList();
  }

  @Test
  void powerThatIsSparedIsNotTaken() {
    noPowerFromM = 1000;
    noPowerToM = 1500;
    FreeRun free = run(1001.312, 50 * KMH, END_M);
    assertStep(free.steps().get(0), new Trigger.AtPlace(1501.312), power(0));
    assertStep(
        run(991.312, 50 * KMH, END_M).steps().get(0), new Trigger.AtPlace(991.312), power(0));
  }

  /** A gap from 1991.312 to 2081.312 m, as {@link DriverRulesTest} has it. */
  private static Assignment gapped(Assignment even, double lengthM) {
    RailGap gap =
        new RailGap(
            "gap", new Extent(EvenLine.at(2000), EvenLine.at(2000 + lengthM)), Applies.EVERYWHERE);
    return Changed.route(even, "railGaps", List.of(gap));
  }

  @Test
  void powerIsOffOverAGap() {
    line = gapped(EvenLine.of(0), 55);
    FreeRun free = run(1801.312, 0, END_M);
    int off = commands(free).indexOf(OFF);
    assertStep(free.steps().get(off), new Trigger.AtPlace(1991.312), OFF);
    assertStep(free.steps().get(off + 1), new Trigger.AtPlace(2081.312), power(0));
  }

  /** At 50 km/h the least time of power is 139 m; on the level nothing is lost by waiting. */
  @Test
  void noPowerIsTakenForAMomentBeforeAGap() {
    line = gapped(EvenLine.of(0), 55);
    assertStep(
        run(1851.312, 50 * KMH, END_M).steps().get(0), new Trigger.AtPlace(1851.312), power(0));
    assertStep(
        run(1861.312, 50 * KMH, END_M).steps().get(0), new Trigger.AtPlace(2081.312), power(0));
  }

  /** Of 5 m: off from 1991.312 to 2031.312 m, which takes three seconds. */
  @Test
  void powerStaysOffForAWhile() {
    line = gapped(EvenLine.of(0), 5);
    TrainModels models = new TrainModels(line);
    stepper = models.plannedStepper();
    stepper.place(0, 1950, 49 * KMH);
    stepper.power(3);
    FreeRun free = run(models, END_M);
    assertStep(free.steps().get(0), new Trigger.AtPlace(1991.312), OFF);
    FreeRun.Step off = free.steps().get(0);
    FreeRun.Step on = free.steps().get(1);
    assertThat(on.command()).isEqualTo(power(0));
    assertThat(on.after().timeS() - off.after().timeS()).isBetween(5.0, 5.8);
  }

  /**
   * From 50 km/h, 221 m to the far end: half of its energy is lost on 23.8 ‰ and more. It takes
   * power before, for however short a time.
   */
  @Test
  void whereATrainWouldLoseTooMuchBeforeAGapItTakesPower() {
    line = gapped(EvenLine.of(24.4), 55);
    assertStep(
        run(1861.312, 50 * KMH, END_M).steps().get(0), new Trigger.AtPlace(1861.312), power(0));
    line = gapped(EvenLine.of(23.2), 55);
    assertThat(run(1861.312, 50 * KMH, 1880).steps()).isEmpty();
  }

  /** For 32 km/h the second notch will do, for 68 the third. */
  @Test
  void aHigherNotchIsTakenWhereTheCeilingRises() {
    ceiling = List.of(step(0, 2000, 10), step(2000, 6000, 20));
    FreeRun free = run(1951.312, 15 * KMH, 2100);
    assertStep(free.steps().get(0), new Trigger.AtPlace(1951.312), power(0));
    assertStep(free.steps().get(1), new Trigger.After(3), power(1));
    assertStep(free.steps().get(2), new Trigger.AtPlace(2001.312), power(2));
    assertThat(free.steps()).hasSize(3);
  }

  /** 20 ‰ take 0.18 m/s², more than the third notch gives near 17 m/s; the fourth gives 0.26. */
  @Test
  void aHigherNotchIsTakenWhereTheTrainHardlyGains() {
    line = EvenLine.broken(0, 2000, 20);
    FreeRun free = run(1591.312, 40 * KMH, 2300);
    assertThat(commands(free)).containsExactly(power(0), power(1), power(2), power(3));
    FreeRun.Step higher = free.steps().get(3);
    double atM = higher.after().atM();
    assertThat(atM).isBetween(2010.0, 2160.0);
    assertStep(higher, new Trigger.AtPlace(line.path().printedAtOrBefore(atM)), power(3));
  }

  /** As above, where the second notch would do: it may not be kept, so the third is taken. */
  @Test
  void aNotchThatIsNoRunningNotchIsOnlyPassed() {
    Traction was = line.stock().traction();
    List<Notch> notches = new ArrayList<>(was.notches());
    Notch second = notches.get(1);
    notches.set(1, new Notch(second.name(), second.effort(), Optional.of(new Span(20))));
    line =
        Changed.in(
            line,
            "stock",
            Changed.in(line.stock(), "traction", Changed.in(was, "notches", notches)));
    ceiling = List.of(step(0, 2000, 10), step(2000, 6000, 20));
    FreeRun free = run(1951.312, 15 * KMH, 1995);
    assertStep(free.steps().get(0), new Trigger.AtPlace(1951.312), power(0));
    assertStep(free.steps().get(1), new Trigger.After(3), power(1));
    assertStep(free.steps().get(2), new Trigger.After(3), power(2));
  }

  @Test
  void whatTheTrainHasBeenAtIsKept() {
    line = EvenLine.of(-10);
    FreeRun free = run(1000, 15, 1500);
    assertThat(free.steps()).isEmpty();
    assertThat(free.seen().risesTo(15.5, 15.5)).isFalse();
    assertThat(free.seen().risesTo(19, 19)).isTrue();
  }

  private void profile(double offM, double offMps, ControlProfile.Notch... notches) {
    profile =
        new ControlProfile(
            List.of(
                new ControlProfile.PowerPhase(notches[0].fromM(), List.of(notches), offM, offMps)),
            List.of(),
            List.of());
  }

  @Test
  void byAProfilePowerIsOnBetweenItsPlaces() {
    profile(2300, NEVER, new ControlProfile.Notch(2000, 1), new ControlProfile.Notch(2200, 2));
    FreeRun free = run(1500, 30 * KMH, END_M);
    assertThat(free.steps()).hasSize(4);
    assertStep(free.steps().get(0), new Trigger.AtPlace(2001.312), power(0));
    assertStep(free.steps().get(1), new Trigger.After(3), power(1));
    assertStep(free.steps().get(2), new Trigger.AtPlace(2201.312), power(2));
    assertStep(free.steps().get(3), new Trigger.AtPlace(2301.312), OFF);
  }

  @Test
  void byAProfilePowerComesOffAtItsSpeed() {
    profile(2300, 48 * KMH, new ControlProfile.Notch(2000, 2));
    FreeRun free = run(1500, 40 * KMH, END_M);
    assertThat(free.steps()).hasSize(4);
    assertStep(free.steps().get(3), new Trigger.SpeedUpTo(48 * KMH), OFF);
  }

  /** The next power of the guide, to a speed that is there already, begins between two places. */
  @Test
  void powerComesOffAtAPlaceThatIsTold() {
    profile =
        new ControlProfile(
            List.of(
                new ControlProfile.PowerPhase(
                    1000, List.of(new ControlProfile.Notch(1000, 2)), 3000, 66 * KMH),
                new ControlProfile.PowerPhase(
                    1603, List.of(new ControlProfile.Notch(1603, 2)), 3000, 40 * KMH)),
            List.of(),
            List.of());
    int off = 0;
    for (double kmh = 30; kmh < 45; kmh += 0.1) {
      for (FreeRun.Step step : run(1501.312, kmh * KMH, 1700).steps()) {
        if (step.trigger() instanceof Trigger.AtPlace at && step.command().equals(OFF)) {
          assertThat(at.atM()).isCloseTo(line.path().printedAtOrBefore(at.atM()), within(1e-6));
          off++;
        }
      }
    }
    assertThat(off).isGreaterThan(10);
  }

  /** It would come off at once. */
  @Test
  void byAProfileNoPowerIsTakenThatIsOverAlready() {
    profile(1050, NEVER, new ControlProfile.Notch(1000, 2));
    assertThat(run(1051.312, 40 * KMH, 1500).steps()).isEmpty();
    assertThat(run(1041.312, 40 * KMH, 1500).steps()).isNotEmpty();
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
