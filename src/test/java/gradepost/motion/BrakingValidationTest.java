package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.BrakeAction;
import gradepost.units.Span;
import gradepost.units.Speed;
import org.junit.jupiter.api.Test;

/** Braking distances and decelerations against published figures. */
class BrakingValidationTest {
  private static double stop(Stepper stepper, TrainBrake rig, double fromMps) {
    stepper.place(0, 0, fromMps);
    stepper.brake(rig, Textbook.FULL_PA);
    assertThat(stepper.advance(new StopConditions())).isEqualTo(StopReason.STANDSTILL);
    return stepper.atM();
  }

  private static Textbook ramp(double deceleration, double deadS, double fillS) {
    return Textbook.train(100, 0)
        .brake(deceleration)
        .action(new BrakeAction.Simultaneous(new Span(deadS)), fillS);
  }

  /**
   * Derived: constant 0.9 m/s² from 30 m/s, 1 s of reaction, a linear build-up of 2 s, integrated
   * by hand: 559.85 m. Tolerance: the rounding of the figure.
   */
  @Test
  void a_linear_build_up_is_integrated() {
    Textbook train = ramp(0.9, 1, 2);
    assertThat(stop(train.onGradient(0), train.rig(), 30)).isCloseTo(559.85, within(0.005));
  }

  /** Form of SUBSET-026 3.13.2.2.3: v·(1 + ½·2) + v²/2a = 560.00 m; numbers derived. */
  @Test
  void the_step_that_stands_for_a_build_up_has_its_half() {
    Textbook train = ramp(0.9, 1, 2);
    TrainBrake step = train.rig().asStep();
    assertThat(stop(train.onGradient(0), step, 30)).isCloseTo(560.00, within(0.005));
  }

  /** Derived: the step is longer than the ramp by a·t²/24. */
  @Test
  void the_step_is_never_shorter_than_the_ramp() {
    for (double a = 0.3; a < 1.4; a += 0.25) {
      for (double fill = 0.5; fill < 12; fill += 2.25) {
        Textbook train = ramp(a, 0.7, fill);
        double ramp = stop(train.onGradient(0), train.rig(), 30);
        double step = stop(train.onGradient(0), train.rig().asStep(), 30);
        assertThat(step - ramp).isCloseTo(a * fill * fill / 24, within(1e-3));
      }
    }
  }

  /**
   * 9 %g is 0.883 m/s² (usual British practice, a trade article); with that rounded figure 60 mph
   * in 407.4 m after build-up, derived.
   */
  @Test
  void nine_per_cent_g_stops_sixty_in_four_hundred_metres() {
    assertThat(0.09 * 9.80665).isCloseTo(0.883, within(0.0005));
    Textbook train = ramp(0.883, 0, 1e-6);
    assertThat(stop(train.onGradient(0), train.rig(), Speed.ofMph(60).metresPerSecond()))
        .isCloseTo(407.4, within(0.1));
  }

  /** SUBSET-026 Figure 35: grade term by rotating mass. */
  @Test
  void a_gradient_accelerates_less_the_more_mass_rotates() {
    double[][] read = {
      {-9, 0.02, -0.0865}, {-18, 0.02, -0.1729}, {-8, 0.02, -0.0769}, {7, 0.15, 0.05965}
    };
    for (double[] row : read) {
      Stepper stepper = Textbook.train(400, row[1]).onGradient(row[0]);
      stepper.place(0, 0, 20);
      assertThat(-stepper.accelerationMps2()).isCloseTo(row[2], within(0.0003));
    }
  }
}
