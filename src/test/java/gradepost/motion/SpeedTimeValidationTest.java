package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.ConstantResistance;
import gradepost.stock.law.ConstantAdhesion;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Speed–time problems of the textbooks, run on the track with the stepper. */
class SpeedTimeValidationTest {
  /** 1 km/h/s. */
  private static final double KMHS = 1 / 3.6;

  private static double root(DoubleUnaryOperator rises, double low, double high) {
    double a = low;
    double b = high;
    for (int i = 0; i < 60; i++) {
      double middle = (a + b) / 2;
      if (rises.applyAsDouble(middle) < 0) {
        a = middle;
      } else {
        b = middle;
      }
    }
    return (a + b) / 2;
  }

  /** Theraja 43.1: 2 km in 200 s with 1.8 and 3.6 km/h/s needs 39.20 km/h at the top. */
  @Test
  void trapezoid() {
    Textbook train = Textbook.train(100, 0).effort(100_000 * 1.8 * KMHS).brake(3.6 * KMHS);
    Stepper stepper = train.onGradient(0);
    TrainBrake rig = train.rig();
    double top =
        root(
            kmh -> {
              stepper.place(0, 0, 0);
              stepper.power(0);
              assertThat(stepper.advance(new StopConditions().speedUp(kmh / 3.6)))
                  .isEqualTo(StopReason.SPEED_UP);
              stepper.shutOff();
              stepper.advance(new StopConditions().time(200 - kmh / 3.6));
              stepper.brake(rig, Textbook.FULL_PA);
              stepper.advance(new StopConditions());
              assertThat(stepper.timeS()).isCloseTo(200, within(0.01));
              return stepper.atM() - 2000;
            },
            5,
            60);
    assertThat(top).isCloseTo(39.20, within(0.05));
  }

  /**
   * Wadhwa ex. 2: 1.6 km in 144 s; accelerate 2, coast 0.16, brake 3.2 km/h/s: 27.06, 105.30 and
   * 11.65 s; 0.203, 1.336 and 0.060 km. Coasting on the level against the resistance that makes it.
   */
  @Test
  void quadrilateral() {
    double coast = 0.16 * KMHS;
    Textbook train =
        Textbook.train(100, 0)
            .resistance(new ConstantResistance(1000 * coast))
            .effort(100_000 * (2 * KMHS + coast))
            .brake(3.2 * KMHS - coast);
    Stepper stepper = train.onGradient(0);
    TrainBrake rig = train.rig();
    double[] seen = new double[6];
    DoubleUnaryOperator run =
        accelerating -> {
          stepper.place(0, 0, 0);
          stepper.power(0);
          stepper.advance(new StopConditions().time(accelerating));
          seen[0] = stepper.timeS();
          seen[3] = stepper.atM();
          stepper.shutOff();
          double v = stepper.speedMps();
          // Coasting ends where the brake's line meets 144 s.
          double coasting = (3.2 * KMHS * (144 - accelerating) - v) / (3.2 * KMHS - coast);
          stepper.advance(new StopConditions().time(accelerating + coasting));
          seen[1] = stepper.timeS();
          seen[4] = stepper.atM();
          stepper.brake(rig, Textbook.FULL_PA);
          stepper.advance(new StopConditions());
          seen[2] = stepper.timeS();
          seen[5] = stepper.atM();
          return stepper.atM() - 1600;
        };
    double accelerating = root(run, 20, 35);
    double shortOfTheRun = run.applyAsDouble(accelerating);
    assertThat(shortOfTheRun).isCloseTo(0, within(0.1));
    assertThat(seen[2]).isCloseTo(144, within(0.01));
    assertThat(seen[0]).isCloseTo(27.06, within(0.05));
    assertThat(seen[1] - seen[0]).isCloseTo(105.30, within(0.05));
    assertThat(seen[2] - seen[1]).isCloseTo(11.65, within(0.05));
    assertThat(seen[3] / 1000).isCloseTo(0.203, within(0.001));
    assertThat((seen[4] - seen[3]) / 1000).isCloseTo(1.336, within(0.001));
    assertThat((seen[5] - seen[4]) / 1000).isCloseTo(0.060, within(0.001));
  }

  /**
   * Gupta 7.12: coasting from 60 km/h for 50 s up 1 % against 40 N/t, rotating 10 %, leaves 37.40
   * km/h; with 30 s to speed, 20 s of braking and a stop of 30 s the schedule speed is 28.53 km/h.
   */
  @Test
  void coasting_up_one_per_cent() {
    double toSpeed = 60 / 3.6 / 30;
    double heldBack = 10 * 9.80665 + 40;
    Textbook train =
        Textbook.train(100, 0.1)
            .resistance(new ConstantResistance(40))
            .effort(100 * (1100 * toSpeed + heldBack));
    Stepper stepper = train.onGradient(10);
    stepper.place(0, 0, 0);
    stepper.power(0);
    stepper.advance(new StopConditions().time(30));
    assertThat(stepper.speedMps() * 3.6).isCloseTo(60, within(0.01));
    stepper.shutOff();
    stepper.advance(new StopConditions().time(80));
    assertThat(stepper.speedMps() * 3.6).isCloseTo(37.40, within(0.05));
    Textbook braked = Textbook.train(100, 0.1);
    double slowing = stepper.speedMps() / 20 - heldBack / 1100;
    stepper.brake(braked.brake(slowing).rig(), Textbook.FULL_PA);
    stepper.advance(new StopConditions());
    assertThat(stepper.timeS()).isCloseTo(100, within(0.01));
    assertThat(stepper.atM() / (stepper.timeS() + 30) * 3.6).isCloseTo(28.53, within(0.05));
  }

  /** Theraja 43.6, derived: 250 t to 42 km/h in 20 s up 1 in 80, 40 N/t, 10 %: 201.0 kN. */
  @Test
  void effort_up_1_in_80() {
    double effort =
        root(
            newtons -> {
              Textbook train =
                  Textbook.train(250, 0.1).resistance(new ConstantResistance(40)).effort(newtons);
              Stepper stepper = train.onGradient(1000.0 / 80);
              stepper.place(0, 0, 0);
              stepper.power(0);
              stepper.advance(new StopConditions().time(20));
              return stepper.speedMps() - 42 / 3.6;
            },
            100_000,
            400_000);
    assertThat(effort / 1000).isCloseTo(201.0, within(0.201));
  }

  /** Chakrabarti 4.5.7: 203 t, 146.0 kN, up 1 in 250, 45 N/t, 10 %, to 42 km/h in 20.2 s. */
  @Test
  void time_up_1_in_250() {
    Stepper stepper =
        Textbook.train(203, 0.1)
            .resistance(new ConstantResistance(45))
            .effort(146_000)
            .onGradient(4);
    stepper.place(0, 0, 0);
    stepper.power(0);
    assertThat(stepper.advance(new StopConditions().speedUp(42 / 3.6)))
        .isEqualTo(StopReason.SPEED_UP);
    assertThat(stepper.timeS()).isCloseTo(20.2, within(0.1));
  }

  /**
   * Gupta 10.5, derived: 500 t held at 40 km/h down 2 % against 40 N/t: the brake takes 867.8 kW.
   */
  @Test
  void power_of_a_brake_that_holds_the_speed() {
    Textbook train = Textbook.train(500, 0).resistance(new ConstantResistance(40)).brake(1);
    Stepper stepper = train.onGradient(-20);
    TrainBrake rig = train.rig();
    double pressure =
        root(
            pa -> {
              stepper.place(0, 0, 40 / 3.6);
              stepper.brake(rig, pa);
              stepper.advance(new StopConditions().time(1));
              return -stepper.accelerationMps2();
            },
            0,
            Textbook.FULL_PA);
    stepper.place(0, 0, 40 / 3.6);
    stepper.brake(rig, pressure);
    stepper.advance(new StopConditions().time(1));
    Work work = new Work();
    stepper.count(work);
    stepper.advance(new StopConditions().time(61));
    assertThat(stepper.speedMps() * 3.6).isCloseTo(40, within(1e-3));
    assertThat(-work.brakeJ() / 60 / 1000).isCloseTo(867.8, within(0.5));
  }

  /**
   * Chakrabarti 4.5.10: 350 t up 1 % at 0.8 km/h/s, 44.5 N/t, 10 %, adhesion 0.25: 55.2 t on driven
   * axles.
   */
  @Test
  void weight_on_driven_axles() {
    double driven =
        root(
            tonnes -> {
              Stepper stepper =
                  Textbook.empty()
                      .vehicle(350, 0.1, 1, tonnes / 350)
                      .resistance(new ConstantResistance(44.5))
                      .effort(1e6)
                      .on(Textbook.gradient(10), new ConstantAdhesion(0.25));
              stepper.place(0, 0, 0);
              stepper.power(0);
              stepper.advance(new StopConditions().time(10));
              return stepper.speedMps() - 0.8 * KMHS * 10;
            },
            20,
            200);
    assertThat(driven).isCloseTo(55.2, within(0.1));
  }
}
