package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import gradepost.route.Stretch;
import gradepost.stock.BrakeAction;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.FrictionTable;
import gradepost.stock.law.NoCurveResistance;
import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Adhesion holds each vehicle's brake and the driven axles, by the place where they are. */
class GripTest {
  private static final double G = 9.80665;

  private static Textbook two() {
    return Textbook.empty()
        .vehicle(40, 0, 20, 1)
        .vehicle(40, 0, 20, 0)
        .brake(1.2)
        .action(new BrakeAction.Simultaneous(new Span(0)), 1e-6);
  }

  private static Stepper on(Textbook train, double mu, LowAdhesionRail poor) {
    return new Stepper(
        train.train(),
        train.train().resistance(),
        TrackForce.of(Textbook.gradient(0), train.train(), new NoCurveResistance(), 0),
        new ConstantAdhesion(mu),
        poor);
  }

  private static LowAdhesionRail poor(double mu, double from, double to) {
    return new LowAdhesionRail(new ConstantAdhesion(mu), List.of(new Stretch(from, to)));
  }

  private static double decelerationAt(Stepper stepper, TrainBrake rig, double at) {
    stepper.place(0, at - 1, 20);
    stepper.brake(rig, Textbook.FULL_PA);
    stepper.advance(new StopConditions().place(at));
    return -stepper.accelerationMps2();
  }

  @Test
  void a_brake_pulls_no_more_than_adhesion() {
    Textbook train = two();
    assertThat(decelerationAt(on(train, 0.2, LowAdhesionRail.none()), train.rig(), 50))
        .isCloseTo(1.2, within(1e-9));
    assertThat(decelerationAt(on(train, 0.08, LowAdhesionRail.none()), train.rig(), 50))
        .isCloseTo(0.08 * G, within(1e-9));
  }

  @Test
  void a_vehicle_on_poor_rail_loses_by_its_share() {
    Textbook train = two();
    Stepper stepper = on(train, 0.15, poor(0.05, 100, 130));
    double full = 1.2;
    double poor = 0.05 * G;
    // Not yet on it; the leading vehicle on it; both; the rear one half on it; past it.
    assertThat(decelerationAt(stepper, train.rig(), 99)).isCloseTo(full, within(1e-9));
    assertThat(decelerationAt(stepper, train.rig(), 120))
        .isCloseTo((full + poor) / 2, within(1e-9));
    assertThat(decelerationAt(stepper, train.rig(), 130))
        .isCloseTo((poor + (0.15 * G * 0.5 + poor * 0.5)) / 2, within(1e-9));
    assertThat(decelerationAt(stepper, train.rig(), 160))
        .isCloseTo((full + (0.15 * G * 0.5 + poor * 0.5)) / 2, within(1e-9));
    assertThat(decelerationAt(stepper, train.rig(), 171)).isCloseTo(full, within(1e-9));
  }

  @Test
  void the_driven_axles_slip_on_poor_rail() {
    Textbook train = two().effort(100_000);
    Stepper stepper = on(train, 0.2, poor(0.05, 100, 130));
    stepper.place(0, 60, 10);
    stepper.power(0);
    assertThat(stepper.accelerationMps2()).isCloseTo(0.2 * G / 2, within(1e-9));
    stepper.place(0, 125, 10);
    stepper.power(0);
    assertThat(stepper.accelerationMps2()).isCloseTo(0.05 * G / 2, within(1e-9));
    stepper.place(0, 160, 10);
    stepper.power(0);
    assertThat(stepper.accelerationMps2()).isCloseTo(0.2 * G / 2, within(1e-9));
    assertThat(stepper.accelerationInNotch(-1)).isCloseTo(0, within(1e-12));
  }

  @Test
  void stretches_that_overlap_are_joined() {
    LowAdhesionRail rail =
        new LowAdhesionRail(
            new ConstantAdhesion(0.05),
            List.of(new Stretch(300, 400), new Stretch(100, 200), new Stretch(150, 220)));
    assertThat(rail.stretches()).containsExactly(new Stretch(100, 220), new Stretch(300, 400));
    assertThat(rail.metLength().at(350)).isCloseTo(170, within(1e-9));
    assertThat(rail.metLength().at(1000)).isCloseTo(220, within(1e-9));
    assertThatThrownBy(() -> poor(0.05, 5, 5)).hasMessageContaining("length");
  }

  /** Hansard, written answer of 21 October 1991: three steps, equal thirds of the force. */
  @Test
  void three_steps_brake_one_two_three() {
    Textbook train = two().threshold(new Pressure(0));
    Stepper stepper = on(train, 0.4, LowAdhesionRail.none());
    for (int step = 1; step <= 3; step++) {
      stepper.place(0, 0, 20);
      stepper.brake(train.rig(), Textbook.FULL_PA * step / 3);
      stepper.advance(new StopConditions().time(1));
      assertThat(-stepper.accelerationMps2()).isCloseTo(1.2 * step / 3, within(1e-9));
    }
  }

  /** The return springs take their pressure first; full pressure still gives what is stated. */
  @Test
  void the_force_begins_at_the_threshold() {
    Textbook train = two().threshold(new Pressure(1e5));
    Stepper stepper = on(train, 0.4, LowAdhesionRail.none());
    double[] asked = {0.5e5, 1e5, 2.5e5, 4e5};
    double[] expected = {0, 0, 0.6, 1.2};
    for (int i = 0; i < asked.length; i++) {
      stepper.place(0, 0, 20);
      stepper.brake(train.rig(), asked[i]);
      stepper.advance(new StopConditions().time(1));
      assertThat(-stepper.accelerationMps2()).isCloseTo(expected[i], within(1e-9));
    }
  }

  /** A law whose friction is 2 says nothing of how much of the rail a brake needs. */
  @Test
  void a_law_of_great_friction_is_held_by_adhesion_all_the_same() {
    FrictionTable two = new FrictionTable(List.of(new FrictionTable.Point(new Speed(10), 2)));
    Textbook train = two().blocks(two);
    assertThat(decelerationAt(on(train, 0.2, LowAdhesionRail.none()), train.rig(), 50))
        .isCloseTo(1.2, within(1e-9));
    assertThat(decelerationAt(on(train, 0.07, LowAdhesionRail.none()), train.rig(), 50))
        .isCloseTo(0.07 * G, within(1e-9));
  }

  /**
   * The brake fills to 1.2 m/s² in 4 s, while the front vehicle comes onto rail that bears 0.049:
   * the pull of each vehicle, by steps of a tenth of a millisecond.
   */
  @Test
  void a_brake_that_fills_on_poor_rail_is_held_back_from_where_it_is() {
    Textbook train = two().action(new BrakeAction.Simultaneous(new Span(0)), 4);
    Stepper stepper = on(train, 0.15, poor(0.05, 100, 130));
    stepper.place(0, 90, 10);
    stepper.brake(train.rig(), Textbook.FULL_PA);
    stepper.advance(new StopConditions().time(3));
    double at = 90;
    double mps = 10;
    double h = 1e-4;
    for (int i = 0; i < 30_000; i++) {
      double asked = 1.2 * (i + 0.5) * h / 4;
      double a = 0;
      for (double end : new double[] {0, 20}) {
        double poor = Math.min(1, Math.max(0, (Math.min(at - end, 130) - 100) / 20));
        a += Math.min(asked, G * (0.15 - 0.10 * poor)) / 2;
      }
      at += h * (mps - a * h / 2);
      mps -= a * h;
    }
    assertThat(stepper.speedMps()).isCloseTo(mps, within(1e-4));
    assertThat(stepper.atM()).isCloseTo(at, within(1e-3));
  }
}
