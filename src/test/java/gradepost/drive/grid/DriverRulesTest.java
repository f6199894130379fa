package gradepost.drive.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Changed;
import gradepost.drive.EvenLine;
import gradepost.drive.brake.TrainModels;
import gradepost.route.RailGap;
import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.stock.Formation;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: the rules of driving on {@link EvenLine}. Its print grid has a place
 * at 1.312 m and every 10 m from there.
 *
 * <p>A notch of the first two pulls 44 and 96 kN at low speeds. A gradient takes 1.5887 kN for each
 * per mille, by 162 t. What is left over 172.8 t is the acceleration.
 */
class DriverRulesTest {
  private static final double LITTLE = 0.01;
  private static final double NONE = Double.POSITIVE_INFINITY;

  private static DriverRules rules(Assignment assignment, double startM, CeilingStep... steps) {
    return new DriverRules(
        assignment,
        new TrainModels(assignment),
        new Ceiling(List.of(steps)),
        startM,
        DrivingStrategy.of(assignment.policy().run()));
  }

  private static CeilingStep step(double fromM, double toM, double mps) {
    return new CeilingStep(fromM, toM, mps, "line");
  }

  /** From 20 to 10 at 1000 m, and up to 15 m/s at 2000 m. */
  private static DriverRules fallAndRise() {
    return rules(EvenLine.of(0), 0, step(0, 1000, 20), step(1000, 2000, 10), step(2000, 6000, 15));
  }

  /** A lower speed begins at the place of the grid before it, a higher one at the place behind. */
  @Test
  void theCeilingIsOnThePrintGridToTheSafeSide() {
    DriverRules rules = fallAndRise();
    assertThat(rules.ceilingAt(991.312 - LITTLE)).isEqualTo(20);
    assertThat(rules.ceilingAt(991.312)).isEqualTo(10);
    assertThat(rules.ceilingAt(2001.312 - LITTLE)).isEqualTo(10);
    assertThat(rules.ceilingAt(2001.312)).isEqualTo(15);
    assertThat(rules.ceilingAt(6000)).isEqualTo(15);
  }

  /** Where two falls come to the same place of the grid, the lower one is left. */
  @Test
  void ofTwoFallsAtOnePlaceTheLowerHolds() {
    DriverRules rules =
        rules(EvenLine.of(0), 0, step(0, 1003, 20), step(1003, 1009, 10), step(1009, 6000, 5));
    assertThat(rules.ceilingAt(1001.312 - LITTLE)).isEqualTo(20);
    assertThat(rules.ceilingAt(1001.312)).isEqualTo(5);
    assertThat(rules.nextRise(900)).isEqualTo(NONE);
  }

  @Test
  void theNextRiseIsThatBeforeAnyFall() {
    DriverRules rules = fallAndRise();
    assertThat(rules.nextRise(900)).isEqualTo(NONE);
    assertThat(rules.nextRise(991.312)).isCloseTo(2001.312, within(1e-6));
    assertThat(rules.nextRise(2001.312)).isEqualTo(NONE);
    assertThat(rules.nextRise(5000)).isEqualTo(NONE);
  }

  /**
   * The brake is out of its springs and half up to 10 psi after 0.3 + (4 + 10) / (2 · 20) s. With
   * that at 10 m/s and 20 m before the board, a train is checked from 26.5 m before it.
   */
  @Test
  void aTrainIsCheckedForALowerSpeedBeforeItsBoard() {
    DriverRules rules = fallAndRise();
    assertThat(rules.checkLagS()).isCloseTo(0.65, within(1e-9));
    assertThat(rules.ceilingToCheckAt(961.312 - LITTLE)).isEqualTo(20);
    assertThat(rules.ceilingToCheckAt(961.312)).isEqualTo(10);
    assertThat(rules.ceilingToCheckAt(1500)).isEqualTo(10);
    assertThat(rules.ceilingToCheckAt(2001.312 - LITTLE)).isEqualTo(10);
    assertThat(rules.ceilingToCheckAt(2001.312)).isEqualTo(15);
  }

  /** At 18 m/s from 31.7 m before the board. */
  @Test
  void aTrainIsCheckedEarlierForAHigherSpeed() {
    DriverRules rules = rules(EvenLine.of(0), 0, step(0, 1000, 20), step(1000, 6000, 18));
    assertThat(rules.ceilingToCheckAt(951.312 - LITTLE)).isEqualTo(20);
    assertThat(rules.ceilingToCheckAt(951.312)).isEqualTo(18);
  }

  /** 26.5 m reach before a step of 20 m: the speed before that is checked for by itself. */
  @Test
  void noTrainIsCheckedForASpeedBeforeTheOneBetween() {
    DriverRules rules =
        rules(EvenLine.of(0), 0, step(0, 1003, 25), step(1003, 1023, 20), step(1023, 6000, 10));
    assertThat(rules.ceilingToCheckAt(1001.312 - LITTLE)).isEqualTo(20);
    assertThat(rules.ceilingToCheckAt(1001.312)).isEqualTo(10);
  }

  @Test
  void theNextEdgeIsThatOfTheCheckingThenOfTheCeiling() {
    DriverRules rules = fallAndRise();
    assertThat(rules.nextEdge(500)).isCloseTo(961.312, within(1e-6));
    assertThat(rules.nextEdge(961.312)).isCloseTo(991.312, within(1e-6));
    assertThat(rules.nextEdge(991.312)).isCloseTo(2001.312, within(1e-6));
    assertThat(rules.nextEdge(2001.312)).isEqualTo(6000);
    assertThat(rules.nextEdge(6000)).isEqualTo(NONE);
  }

  /** Without a rail from 2000 to 2055 m: power is off until the leading motor car is over it. */
  private static Assignment gapped(Assignment even) {
    return Changed.route(
        even,
        "railGaps",
        Stream.of(3000, 2000)
            .map(
                m ->
                    new RailGap(
                        "gap", new Extent(EvenLine.at(m), EvenLine.at(m + 55)), Applies.EVERYWHERE))
            .toList());
  }

  private static DriverRules gapped(double startM) {
    return rules(gapped(EvenLine.of(0)), startM, step(0, 6000, 20));
  }

  @Test
  void noPowerIsTakenUntilTheLeadingMotorCarHasPassedTheGap() {
    DriverRules rules = gapped(0);
    assertThat(rules.powerForbidden(1991.312 - LITTLE)).isFalse();
    assertThat(rules.powerForbidden(1991.312)).isTrue();
    assertThat(rules.powerForbidden(2081.312 - LITTLE)).isTrue();
    assertThat(rules.powerForbidden(2081.312)).isFalse();
    assertThat(rules.toNoPowerM(1900)).isCloseTo(91.312, within(1e-6));
    assertThat(rules.pastNoPowerM(1900)).isCloseTo(181.312, within(1e-6));
    assertThat(rules.toNoPowerM(2000)).isCloseTo(991.312, within(1e-6));
    assertThat(rules.pastNoPowerM(2000)).isCloseTo(1081.312, within(1e-6));
    assertThat(rules.toNoPowerM(3050)).isEqualTo(NONE);
    assertThat(rules.pastNoPowerM(3050)).isEqualTo(NONE);
    assertThat(rules.nextEdge(1000)).isCloseTo(1991.312, within(1e-6));
    assertThat(rules.nextEdge(1991.312)).isCloseTo(2081.312, within(1e-6));
    assertThat(rules.nextEdge(2081.312)).isCloseTo(2991.312, within(1e-6));
    assertThat(rules.nextEdge(3081.312)).isEqualTo(6000);
  }

  /** A trailer of 20 m in front of the motor car: a grid place or two more. */
  @Test
  void aTrailerInFrontIsOverTheGapFirst() {
    Assignment even = gapped(EvenLine.of(0));
    List<gradepost.stock.Vehicle> cars = new ArrayList<>(even.formation().vehicles());
    Collections.swap(cars, 0, 1);
    Assignment trailer = Changed.in(even, "formation", new Formation("trailer first", cars));
    DriverRules rules = rules(trailer, 0, step(0, 6000, 20));
    assertThat(rules.powerForbidden(2101.312 - LITTLE)).isTrue();
    assertThat(rules.powerForbidden(2101.312)).isFalse();
  }

  /** A train that starts over a gap has to take power there. */
  @Test
  void aTrainThatStartsOverAGapTakesPower() {
    for (double startM : new double[] {1991.312, 2040, 2081.312}) {
      assertThat(gapped(startM).powerForbidden(2040)).as("from %f", startM).isFalse();
    }
    assertThat(gapped(1991.312 - LITTLE).powerForbidden(2040)).isTrue();
    assertThat(gapped(2081.312 + LITTLE).powerForbidden(2040)).isTrue();
  }

  /** No speed may be held with power over it. */
  @Test
  void noStretchWithAGapInItIsWithPower() {
    DriverRules rules = gapped(0);
    assertThat(rules.powerForbidden(1000, 1991.312)).isFalse();
    assertThat(rules.powerForbidden(1000, 1992)).isTrue();
    assertThat(rules.powerForbidden(2000, 2010)).isTrue();
    assertThat(rules.powerForbidden(2081.312, 2900)).isFalse();
  }

  private static int notch(double permille, boolean holding) {
    return rules(EvenLine.of(permille), 0, step(0, 6000, 20)).notchFor(3000, 2, holding);
  }

  /** 44 kN less 23.83 are 0.117 m/s² on 15 ‰: enough to hold a speed, 0.12 are wanted to gain. */
  @Test
  void theLowestNotchThatGainsOrHolds() {
    assertThat(notch(14.5, false)).isZero();
    assertThat(notch(15, false)).isEqualTo(1);
    assertThat(notch(15, true)).isZero();
    assertThat(notch(23.2, true)).isEqualTo(0);
    assertThat(notch(23.5, true)).isEqualTo(1);
    assertThat(notch(46, false)).isEqualTo(1);
    assertThat(notch(60, false)).isEqualTo(3);
  }

  /** The whole train is on a rise of 15 ‰ from 1080 m on; at 1070 m six sevenths of it are. */
  @Test
  void aNotchIsChosenForWhatLiesAhead() {
    DriverRules rules = rules(EvenLine.broken(0, 1000, 15), 0, step(0, 6000, 20));
    assertThat(rules.notchFor(670, 2, false)).isZero();
    assertThat(rules.notchFor(680, 2, false)).isEqualTo(1);
    assertThat(rules.notchFor(1200, 2, false)).isEqualTo(1);
  }

  /**
   * 10 psi as the policy has it are 0.7 bar by the gauge. On 10 ‰ falling the train gathers 0.0919
   * m/s²; 0.08 more are 13.3 psi, 0.917 bar, at 0.85 m/s² for 46 psi above the springs' 4.
   */
  @Test
  void aTrainIsCheckedByNoMoreThanIsNeeded() {
    assertThat(pressure(EvenLine.of(0), 3000)).isCloseTo(0.7e5, within(1.0));
    assertThat(pressure(EvenLine.of(-10), 3000)).isCloseTo(1.0e5, within(1.0));
    assertThat(pressure(EvenLine.of(20), 3000)).isCloseTo(0.7e5, within(1.0));
  }

  /** On six sevenths of the fall 12.6 psi are needed, 0.869 bar. */
  @Test
  void aTrainIsCheckedForTheSteepestThatLiesAhead() {
    Assignment falls = EvenLine.broken(0, 1000, -10);
    assertThat(pressure(falls, 670)).isCloseTo(0.9e5, within(1.0));
    assertThat(pressure(falls, 680)).isCloseTo(1.0e5, within(1.0));
    Assignment less = EvenLine.broken(-10, 1000, 0);
    assertThat(pressure(less, 1000)).isCloseTo(1.0e5, within(1.0));
    assertThat(pressure(less, 1200)).isCloseTo(0.7e5, within(1.0));
  }

  private static double pressure(Assignment assignment, double atM) {
    return rules(assignment, 0, step(0, 6000, 20)).checkPressurePa(atM, 15);
  }

  @Test
  void anotherMannerChangesTheBandAndNothingElse() {
    DriverRules usual = gapped(0);
    DrivingStrategy close =
        DrivingStrategy.of(
            usual
                .run()
                .with(new Speed(1 / 3.6), new Speed(3 / 3.6), usual.run().coastBeforeBraking()));
    DriverRules other = usual.in(close);
    assertThat(other.manner()).isEqualTo(close);
    assertThat(other.band().offMps(20)).isCloseTo(69 / 3.6, within(1e-9));
    assertThat(other.band().onMps(20)).isCloseTo(67 / 3.6, within(1e-9));
    assertThat(other.ceilingAt(1000)).isEqualTo(20);
    assertThat(other.powerForbidden(2040)).isTrue();
    assertThat(other.checkLagS()).isEqualTo(usual.checkLagS());
    assertThat(other.unitMps()).isEqualTo(1 / 3.6);
  }
}
