package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Changed;
import gradepost.drive.EvenLine;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.ControlProfile;
import gradepost.plan.Trigger;
import gradepost.route.RailGap;
import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.stock.Notch;
import gradepost.stock.Traction;
import gradepost.task.Assignment;
import gradepost.units.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Validation, with a pencil: where power is spared, gaps, higher notches, a profile. */
class FreeRunPowerTest extends FreeRuns {
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
}
