package gradepost.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.ConstantBlocks;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.DecelerationSteps;
import gradepost.stock.law.FrictionTable;
import gradepost.stock.law.ShareOf;
import gradepost.units.Acceleration;
import gradepost.units.Exact;
import gradepost.units.Force;
import gradepost.units.Length;
import gradepost.units.Mass;
import gradepost.units.Pressure;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: what the formulas of stock must hold whatever numbers stand in them. */
class StockFormulaTest {
  /** Wheel, gear and efficiency are none of them 1, so that none can take another's place. */
  private static SeriesMotor motor(double efficiency) {
    return new SeriesMotor(600, 200, 900, 0.15, 80, 3.5, new Length(0.84), efficiency);
  }

  /**
   * Power at the rail is the power against the back voltage, less what the gear loses: {@code F·v =
   * η·(U − I·R)·I}.
   */
  @Test
  void aMotorGivesToTheRailWhatItsGearLeavesOfItsPower() {
    for (double amperes : new double[] {60, 200, 320}) {
      for (double field : new double[] {0.5, 1}) {
        double v = motor(0.93).speed(600, amperes, field, 0.4).metresPerSecond();
        double back = 600 - amperes * (0.15 + 0.4);
        assertThat(motor(0.93).effortN(amperes, field) * v)
            .isCloseTo(0.93 * back * amperes, within(1e-6));
      }
    }
  }

  /** At its rating: 900 turns a minute over 3.5 on a wheel of 0.84 m are 11.31 m/s. */
  @Test
  void aMotorAtItsRatingTurnsAsItsPlateSays() {
    assertThat(motor(0.93).speed(600, 200, 1, 0).metresPerSecond())
        .isCloseTo(900.0 / 60 / 3.5 * Math.PI * 0.84, within(1e-9));
    assertThat(motor(0.93).speed(10, 200, 1, 0).metresPerSecond()).isZero();
  }

  @Test
  void aMotorWithoutARatingIsRefused() {
    Length wheel = new Length(0.84);
    assertThatThrownBy(() -> new SeriesMotor(0, 0, 900, 0, 80, 3, wheel, 1))
        .hasMessageContaining("a rating");
    assertThatThrownBy(() -> new SeriesMotor(600, 0, 900, 0.1, 80, 3, wheel, 1))
        .hasMessageContaining("a rating");
    assertThatThrownBy(() -> new SeriesMotor(600, 200, 0, 0.1, 80, 3, wheel, 1))
        .hasMessageContaining("a rating");
    assertThatThrownBy(() -> new SeriesMotor(600, 200, 900, 0.1, 80, 0, wheel, 1))
        .hasMessageContaining("a gear");
    assertThatThrownBy(() -> new SeriesMotor(600, 200, 900, 3, 80, 3, wheel, 1))
        .hasMessageContaining("back voltage");
    assertThatThrownBy(() -> new SeriesMotor(600, 200, 900, 0.1, 80, 3, wheel, 0))
        .hasMessageContaining("drives a wheel");
    assertThatThrownBy(() -> new SeriesMotor(600, 200, 900, 0.1, 80, 3, new Length(0), 1))
        .hasMessageContaining("drives a wheel");
    assertThat(new SeriesMotor(600, 200, 900, 0, 0, 3, wheel, 1).flux(100, 1)).isPositive();
  }

  /** Two in series have half of the line each, and half of the resistance that is left in. */
  @Test
  void inSeriesEachMotorHasItsShareOfTheLine() {
    SeriesMotorPower power =
        new SeriesMotorPower(
            motor(0.93), 1200, 4, List.of(new SeriesMotorPower.Group("series", 2, 200, 1, 0.8)));
    assertThat(power.resistanceOut(power.groups().get(0), 150))
        .isEqualTo(motor(0.93).speed(600, 150, 1, 0.4));
  }

  /** By hand: 100 + 5 · 10 + 2 · 10² N; and 40 t at 14 N/t, 0.3 N/t a m/s, 3 + 2 · 0.5 N/(m/s)². */
  @Test
  void resistanceGrowsWithEveryTerm() {
    assertThat(new RunningResistance(100, 5, 2).atN(10)).isEqualTo(350);
    Formation two = new Formation("2-car", List.of(vehicle(20, 0), vehicle(20, 0.5)));
    RunningResistance law = new QuadraticResistance(14, 0.3, 3, 0.5).of(two, LoadCase.TARE);
    assertThat(law.aN()).isCloseTo(560, within(1e-9));
    assertThat(law.bNsPerM()).isCloseTo(12, within(1e-9));
    assertThat(law.cNs2PerM2()).isCloseTo(4, within(1e-9));
  }

  private static Vehicle vehicle(double lengthM, double motored) {
    return new Vehicle(
        "car",
        new Length(lengthM),
        new Mass(20_000),
        new Mass(24_000),
        new Mass(27_000),
        4,
        motored,
        new RotatingMass.ShareOfTare(0.1),
        1,
        Optional.empty());
  }

  @Test
  void aFormationIsAsLongAndAsHeavyAsItsVehicles() {
    Formation three =
        new Formation("3-car", List.of(vehicle(20, 0.5), vehicle(18, 0), vehicle(20, 0.5)));
    assertThat(three.lengthM()).isEqualTo(58);
    assertThat(three.massKg(LoadCase.TARE)).isEqualTo(60_000);
    assertThat(three.massKg(LoadCase.SEATED)).isEqualTo(72_000);
    assertThat(three.massKg(LoadCase.CRUSH)).isEqualTo(81_000);
    assertThat(three.motoredVehicles()).isEqualTo(2);
    assertThat(vehicle(20, 0).motored()).isFalse();
    assertThat(three.wholeVehicles(0)).isZero();
    assertThat(three.wholeVehicles(1 / 3.0)).isEqualTo(1);
    assertThat(three.wholeVehicles(0.34)).isEqualTo(2);
  }

  /** The air that a reservoir gives is the air that a cylinder takes: none comes or goes. */
  @Test
  void fillingACylinderUntilBothAreEqualEndsWhereTheyAreEqual() {
    List<PipeLaw> laws =
        List.of(
            new PipeLaw.Ratio(Pressure.ofPsi(70), 2.5), new PipeLaw.Boyle(Pressure.ofPsi(70), 3.4));
    for (PipeLaw law : laws) {
      for (double from : new double[] {0, 8, 25}) {
        double reservoir = 70 * Exact.PSI_PA;
        double cylinder = from * Exact.PSI_PA;
        double equal = law.equalPa(reservoir, cylinder);
        assertThat(equal).isBetween(cylinder, reservoir);
        assertThat(law.reservoirAfterPa(reservoir, cylinder, equal)).isCloseTo(equal, within(1e-3));
      }
    }
  }

  /** By hand: from 20 to 30 psi at 2.5 to 1 costs the reservoir 4 psi. */
  @Test
  void aSecondApplicationCostsTheReservoirOnlyWhatItAdds() {
    PipeLaw law = new PipeLaw.Ratio(Pressure.ofPsi(70), 2.5);
    assertThat(law.reservoirAfterPa(60, 20, 30)).isCloseTo(56, within(1e-9));
    PipeLaw boyle = new PipeLaw.Boyle(Pressure.ofPsi(70), 2.5);
    assertThat(boyle.reservoirAfterPa(60, 20, 30)).isCloseTo(56, within(1e-9));
    PipeLaw kept = new PipeLaw.Distributor(Pressure.ofBar(5), 2.5, Pressure.ofBar(3.8));
    assertThat(kept.reservoirAfterPa(60, 20, 30)).isEqualTo(60);
  }

  /** What is counted on where nothing else is known is never more than the law gives. */
  @Test
  void theLeastAdhesionIsAtOrBelowThatAtEverySpeed() {
    AdhesionLaw dry = new CurtiusKniffler();
    for (AdhesionLaw law : List.of(dry, new ShareOf(dry, 0.6), new ConstantAdhesion(0.06))) {
      for (double v = 0; v <= 60; v += 5) {
        assertThat(law.least()).isPositive().isLessThanOrEqualTo(law.mu(v));
      }
      assertThat(law.mu(1e7)).isCloseTo(law.least(), within(1e-5));
    }
    assertThatThrownBy(() -> new ShareOf(dry, 0)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> new ConstantAdhesion(0)).hasMessageContaining("above 0");
  }

  private static EffortPoint point(double mps, double newtons) {
    return new EffortPoint(new Speed(mps), new Force(newtons));
  }

  @Test
  void anEffortIsLevelBeforeItsFirstPointLinearBetweenAndNothingBeyondTheLast() {
    Notch notch = new Notch("1", List.of(point(2, 1000), point(4, 800), point(8, 200)));
    assertThat(notch.effortN(0)).isEqualTo(1000);
    assertThat(notch.effortN(2)).isEqualTo(1000);
    assertThat(notch.effortN(3)).isCloseTo(900, within(1e-9));
    assertThat(notch.effortN(4)).isCloseTo(800, within(1e-9));
    assertThat(notch.effortN(5)).isCloseTo(650, within(1e-9));
    assertThat(notch.effortN(8)).isCloseTo(200, within(1e-9));
    assertThat(notch.effortN(8.01)).isZero();
    assertThatThrownBy(() -> new Notch("1", List.of(point(2, 1000), point(2, 800))))
        .hasMessageContaining("rise in speed");
    assertThatThrownBy(() -> new Notch("1", List.of())).hasMessageContaining("no effort");
  }

  @Test
  void frictionIsLevelBeyondTheEndsOfItsTable() {
    List<FrictionTable.Point> points = new ArrayList<>();
    points.add(new FrictionTable.Point(new Speed(5), 0.3));
    points.add(new FrictionTable.Point(new Speed(10), 0.2));
    points.add(new FrictionTable.Point(new Speed(20), 0.1));
    FrictionTable table = new FrictionTable(points);
    assertThat(table.friction(0)).isEqualTo(0.3);
    assertThat(table.friction(7.5)).isCloseTo(0.25, within(1e-9));
    assertThat(table.friction(15)).isCloseTo(0.15, within(1e-9));
    assertThat(table.friction(40)).isEqualTo(0.1);
    points.set(1, new FrictionTable.Point(new Speed(5), 0.2));
    assertThatThrownBy(() -> new FrictionTable(points)).hasMessageContaining("rises in speed");
    assertThatThrownBy(() -> new FrictionTable(List.of())).hasMessageContaining("at least");
    assertThat(new ConstantBlocks().friction(3)).isEqualTo(1);
  }

  private static DecelerationSteps.Step step(double upTo, double mps2) {
    return new DecelerationSteps.Step(new Speed(upTo), new Acceleration(mps2));
  }

  @Test
  void aBandOfSpeedReachesUpToAndWithItsSpeedAndTheLastGoesOn() {
    DecelerationSteps steps = new DecelerationSteps(List.of(step(10, 0.9), step(20, 0.7)));
    assertThat(steps.friction(0)).isEqualTo(0.9);
    assertThat(steps.friction(10)).isEqualTo(0.9);
    assertThat(steps.friction(10.1)).isEqualTo(0.7);
    assertThat(steps.friction(35)).isEqualTo(0.7);
    assertThatThrownBy(() -> new DecelerationSteps(List.of(step(10, 0.9), step(10, 0.7))))
        .hasMessageContaining("rise");
    assertThatThrownBy(() -> new DecelerationSteps(List.of(step(10, 0))))
        .hasMessageContaining("slows the train");
    assertThatThrownBy(() -> new DecelerationSteps(List.of())).hasMessageContaining("at least");
  }

  /** Common practice of these presets: an emergency application is asked for in half the time. */
  @Test
  void theEmergencyApplicationOfAnAirBrakeIsTheQuicker() {
    for (BrakePreset preset : List.of(BrakePreset.TWO_PIPE_AIR, BrakePreset.GOODS_AIR)) {
      BrakeAction service = preset.systems().get(0).action();
      BrakeAction emergency = preset.systems().get(1).action();
      assertThat(emergency.deadTime().seconds())
          .isCloseTo(service.deadTime().seconds() / 2, within(1e-9));
      assertThat(emergency.along(200).seconds())
          .isCloseTo(service.along(200).seconds() / 1.1, within(1e-9));
    }
  }
}
