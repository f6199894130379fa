package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.RotatingMass;
import gradepost.stock.Stock;
import gradepost.stock.Vehicle;
import gradepost.units.Length;
import gradepost.units.Mass;
import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** By hand: which brakes are counted on, how much of them, and when they answer. */
class TrainBrakeTest {
  private static Vehicle vehicle(double tonnes, double brakeWeight) {
    Mass mass = Mass.ofTonnes(tonnes);
    return new Vehicle(
        "V",
        new Length(20),
        mass,
        mass,
        mass,
        4,
        0,
        new RotatingMass.ShareOfTare(0),
        brakeWeight,
        Optional.empty());
  }

  private static TrainBrake brake(double factor, double isolated, Vehicle... vehicles) {
    Textbook textbook =
        Textbook.empty().action(new BrakeAction.Propagated(new Span(0.5), new Speed(200)), 2);
    for (Vehicle v : vehicles) {
      textbook.vehicle(v);
    }
    Stock stock = textbook.stock();
    Formation formation = stock.formations().get(0);
    BrakeSystem system = stock.service();
    return TrainBrake.of(
        stock, formation, LoadCase.TARE, textbook.train(), system, factor, isolated);
  }

  private static void assertOff(TrainBrake brake, int... off) {
    for (int i = 0; i < brake.gainNPerPa().length; i++) {
      boolean isOff = false;
      for (int o : off) {
        isOff |= o == i;
      }
      assertThat(brake.gainNPerPa()[i] == 0).as("vehicle %d", i).isEqualTo(isOff);
    }
  }

  /** What is lost is the most that so many vehicles can lose. */
  @Test
  void theStrongestBrakesAreIsolatedFirst() {
    Vehicle[] train = {vehicle(40, 1), vehicle(30, 1.5), vehicle(30, 2), vehicle(40, 1)};
    assertOff(brake(1, 0.25, train), 2);
    assertOff(brake(1, 0.5, train), 1, 2);
  }

  /** On a poor rail it holds most. */
  @Test
  void ofEqualBrakesThatOfTheHeaviestVehicle() {
    Vehicle[] train = {vehicle(30, 1), vehicle(40, 1), vehicle(50, 1), vehicle(40, 1)};
    assertOff(brake(1, 0.25, train), 2);
    assertOff(brake(1, 0.5, train), 1, 2);
    assertOff(brake(1, 0.75, train), 1, 2, 3);
  }

  @Test
  void ofEqualVehiclesTheForemost() {
    Vehicle[] train = {vehicle(40, 1), vehicle(40, 1), vehicle(40, 1), vehicle(40, 1)};
    assertOff(brake(1, 0.25, train), 0);
    assertOff(brake(1, 0.5, train), 0, 1);
  }

  /**
   * 1 m/s² of 140 t at 4 bar are 0.35 N for each pascal, shared by 1 : 1.5 : 2 : 1; nine tenths of
   * it.
   */
  @Test
  void whatIsLeftIsEachVehiclesOwnShare() {
    TrainBrake brake =
        brake(0.9, 0.25, vehicle(40, 1), vehicle(30, 1.5), vehicle(30, 2), vehicle(40, 1));
    double one = 0.9 * 0.35 / 5.5;
    double[] gain = brake.gainNPerPa();
    assertThat(gain[0]).isCloseTo(one, within(1e-9));
    assertThat(gain[1]).isCloseTo(1.5 * one, within(1e-9));
    assertThat(gain[3]).isCloseTo(one, within(1e-9));
  }

  /** By the pipe, 200 m/s to the middles at 10, 30, 50 and 70 m; as if the foremost were off. */
  @Test
  void theOthersAnswerAsLateAsIfTheForemostWereIsolated() {
    TrainBrake brake =
        brake(1, 0.25, vehicle(40, 1), vehicle(30, 1.5), vehicle(30, 2), vehicle(40, 1));
    double[] delay = brake.delayS();
    assertThat(delay[0]).isCloseTo(0.15, within(1e-9));
    assertThat(delay[1]).isCloseTo(0.25, within(1e-9));
    assertThat(delay[3]).isCloseTo(0.35, within(1e-9));
    assertThat(brake.lastDelayS()).isCloseTo(0.35, within(1e-9));
    assertThat(brake.deadTimeS()).isEqualTo(0.5);
  }

  /** Springs take 1 of 4 bar; 2 bar a second: 0.5 s to the springs and half of the 1.5 s beyond. */
  @Test
  void theStepComesWhenHalfOfTheForceIsThere() {
    Textbook textbook =
        Textbook.train(40, 0)
            .threshold(new Pressure(1e5))
            .action(new BrakeAction.Simultaneous(new Span(0.3)), 2);
    TrainBrake step = textbook.rig().asStep();
    assertThat(step.deadTimeS()).isCloseTo(0.3 + 0.5 + 0.75, within(1e-9));
    assertThat(step.applyPaPerS()).isGreaterThan(1e11);
    assertThat(step.fullPa()).isEqualTo(Textbook.FULL_PA);
    assertThat(step.gainNPerPa()).isEqualTo(textbook.rig().gainNPerPa());
  }
}
