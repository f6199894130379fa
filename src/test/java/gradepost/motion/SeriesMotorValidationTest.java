package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.ConstantResistance;
import gradepost.stock.Notch;
import gradepost.stock.SeriesMotor;
import gradepost.stock.SeriesMotorPower;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.units.Exact;
import gradepost.units.Length;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Series motors against textbook cases, through efforts and the stepper. */
class SeriesMotorValidationTest {
  private static final Length WHEEL = new Length(1);
  private static final AdhesionLaw GRIP = new ConstantAdhesion(0.5);

  /**
   * Two motors of 0.1 Ω on 600 V, 300 A, which reach 29 km/h in parallel with no resistance left.
   */
  private static SeriesMotor motor() {
    double wheelTurns = 29 / 3.6 / Math.PI * 60;
    return new SeriesMotor(600, 300, 4 * wheelTurns, 0.1, 150, 4, WHEEL, 1);
  }

  private static SeriesMotorPower power() {
    return new SeriesMotorPower(
        motor(),
        600,
        2,
        List.of(
            new SeriesMotorPower.Group("shunt", 2, 300, 1, 3),
            new SeriesMotorPower.Group("series", 2, 300, 1, 0),
            new SeriesMotorPower.Group("parallel", 1, 300, 1, 0),
            new SeriesMotorPower.Group("weak field", 1, 300, 0.6, 0)));
  }

  /**
   * Gupta 9.2: 600 V, 300 A, 0.1 Ω, 15 s to 29 km/h at an even rate: transition from series to
   * parallel at 7.105 s and 13.7 km/h.
   */
  @Test
  void series_to_parallel_transition() {
    SeriesMotorPower power = power();
    Speed transition = power.resistanceOut(power.groups().get(1), 300);
    assertThat(transition.kmh()).isCloseTo(13.7, within(0.05));
    List<Notch> notches = power.notches();
    double start = notches.get(1).effortN(0);
    double mass = start / (29 / 3.6 / 15);
    Stepper stepper = Textbook.train(mass / 1000, 0).power(notches).onGradient(0);
    stepper.place(0, 0, 0);
    stepper.power(1);
    stepper.advance(new StopConditions().speedUp(transition.metresPerSecond()));
    assertThat(stepper.timeS()).isCloseTo(7.105, within(0.05));
    stepper.power(2);
    stepper.advance(new StopConditions().speedUp(29 / 3.6));
    assertThat(stepper.timeS()).isCloseTo(15, within(0.05));
  }

  /**
   * Gupta 9.6: at the same current weak field takes 970 kg at 35.8 km/h to 772 kg at 45.0 km/h: the
   * product stays, since voltage and current do.
   */
  @Test
  void weak_field_keeps_force_times_speed() {
    SeriesMotor motor = motor();
    double current = 250;
    double full = motor.speed(600, current, 1, 0).kmh();
    double share = weakFieldFor(motor, current, full * 45.0 / 35.8);
    double weakKg = 970 * motor.effortN(current, share) / motor.effortN(current, 1);
    assertThat(share).isBetween(0.3, 0.95);
    assertThat(weakKg).isCloseTo(772, within(1.0));
  }

  private static double weakFieldFor(SeriesMotor motor, double current, double kmh) {
    double low = 0.05;
    double high = 1;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (motor.speed(600, current, middle, 0).kmh() > kmh) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Electrical power less the loss in the windings is the power at the rail: no gear loss here. */
  @Test
  void power_at_the_rail_is_that_of_the_back_voltage() {
    SeriesMotor motor = motor();
    for (double amperes = 60; amperes < 500; amperes += 70) {
      double rail =
          motor.effortN(amperes, 0.8) * motor.speed(600, amperes, 0.8, 0).metresPerSecond();
      assertThat(rail).isCloseTo((600 - 0.1 * amperes) * amperes, within(1e-6 * rail));
    }
  }

  @Test
  void each_notch_balances_faster_than_the_one_before_and_slower_up_a_gradient() {
    Textbook textbook =
        Textbook.train(60, 0.1).resistance(new ConstantResistance(40)).power(power().notches());
    Train train = textbook.train();
    double last = 0;
    for (int notch = 0; notch < 4; notch++) {
      double level = new ForceBalance(train, GRIP).balancingMps(notch, 0);
      double rising = new ForceBalance(train, GRIP).balancingMps(notch, 5);
      assertThat(level).isGreaterThan(last);
      assertThat(rising).isLessThan(level);
      last = level;
      Stepper stepper = textbook.onGradient(5);
      stepper.place(0, 0, rising);
      stepper.power(notch);
      assertThat(stepper.accelerationMps2()).isCloseTo(0, within(1e-6));
    }
    assertThat(new ForceBalance(train, GRIP).balancingMps(0, 60)).isZero();
  }

  /**
   * By hand: 60 t on 20 ‰ falling are 60 000 · 9.80665 · 0.02 = 11 768 N; 40 N/t at every speed are
   * 2400 N, so that nothing holds it. With 0.02 of grip under all its axles no notch pulls more
   * than 60 000 · 9.80665 · 0.02 = 11 768 N, which is 15.92 ‰ above the resistance.
   */
  @Test
  void without_a_balance_there_is_no_figure_and_grip_holds_every_notch_back() {
    Textbook textbook =
        Textbook.train(60, 0.1).resistance(new ConstantResistance(40)).power(power().notches());
    Train train = textbook.train();
    assertThat(new ForceBalance(train, GRIP).balancingMps(-1, -20)).isInfinite();
    assertThat(new ForceBalance(train, GRIP).balancingMps(-1, 0)).isZero();
    AdhesionLaw poor = new ConstantAdhesion(0.02);
    assertThat(new ForceBalance(train, poor).balancingMps(0, 15.93)).isZero();
    assertThat(new ForceBalance(train, poor).balancingMps(0, 15.91)).isPositive();
    assertThat(new ForceBalance(train, GRIP).balancingMps(0, 15.93)).isPositive();
  }

  @Test
  void a_lower_line_voltage_lowers_the_speed_at_a_current() {
    SeriesMotorPower power = power();
    SeriesMotorPower low = power.atLineVolts(450);
    SeriesMotorPower.Group parallel = power.groups().get(2);
    // Back voltages 570 and 420 V at 300 A.
    assertThat(low.resistanceOut(parallel, 300).kmh() / power.resistanceOut(parallel, 300).kmh())
        .isCloseTo(420.0 / 570, within(1e-9));
    Notch shared = power.traction(new Span(1), false).atLineVoltage(0.75).notches().get(2);
    for (double v = 0; v < 20; v += 1.5) {
      double exact = low.notches().get(2).effortN(v);
      assertThat(shared.effortN(v)).isCloseTo(exact, within(0.07 * exact + 0.02 * 6000));
    }
  }

  @Test
  void efforts_fall_with_speed_and_end_at_nothing() {
    for (Notch notch : power().notches()) {
      double last = Double.POSITIVE_INFINITY;
      for (double mph = 0; mph < 300; mph += 2) {
        double effort = notch.effortN(mph * Exact.MPH_MPS);
        assertThat(effort).isLessThanOrEqualTo(last);
        last = effort;
      }
      assertThat(last).isZero();
    }
  }

  @Test
  void a_group_that_lets_no_current_through_is_refused() {
    SeriesMotorPower blocked =
        new SeriesMotorPower(
            motor(), 600, 2, List.of(new SeriesMotorPower.Group("x", 2, 300, 1, 60)));
    assertThatThrownBy(blocked::notches).hasMessageContaining("lets no current through");
  }
}
