package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.stock.ConstantResistance;
import gradepost.stock.law.ConstantAdhesion;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The balance of forces by hand, and against the equation that the stepper integrates. */
class ForceBalanceTest {
  static LongStream seeds() {
    return LongStream.rangeClosed(700, 720);
  }

  /**
   * Validation by hand: 50 t and a rotating tenth are 55 000 kg to speed up; 40 N/t are 2000 N; 4 ‰
   * of 50 000 · 9.80665 N are 1961.33 N; 30 000 N of effort are less than what 0.1 of grip bears
   * (49 033 N), and more than what 0.04 bears (19 613.3 N).
   */
  @Test
  void effort_less_resistance_less_gradient_over_inertia() {
    Train train =
        Textbook.train(50, 0.1).resistance(new ConstantResistance(40)).effort(30_000).train();
    double trackN = TrackForce.onGradientN(train, 4);
    assertThat(trackN).isCloseTo(1961.33, within(1e-6));
    ForceBalance fair = new ForceBalance(train, new ConstantAdhesion(0.1));
    assertThat(fair.effortN(0, 10)).isEqualTo(30_000);
    assertThat(fair.surplusN(0, 10, trackN)).isCloseTo(26_038.67, within(1e-6));
    assertThat(fair.accelerationMps2(0, 10, trackN)).isCloseTo(26_038.67 / 55_000, within(1e-9));
    ForceBalance poor = new ForceBalance(train, new ConstantAdhesion(0.04));
    assertThat(poor.effortN(0, 10)).isCloseTo(19_613.3, within(1e-6));
    assertThat(poor.surplusN(0, 10, trackN)).isCloseTo(15_651.97, within(1e-6));
    assertThat(poor.effortN(-1, 10)).isZero();
    assertThat(poor.accelerationMps2(-1, 10, trackN)).isCloseTo(-3961.33 / 55_000, within(1e-9));
  }

  /** Property: at every place, speed and notch it is what the stepper starts from, brakes off. */
  @ParameterizedTest
  @MethodSource("seeds")
  void the_stepper_moves_by_the_same_balance(long seed) {
    Scenario in = new Scenario(seed);
    Train train = in.train();
    PiecewiseLinear track =
        TrackForce.of(in.track(), train, in.stock.curves(), in.stock.checkRailDragNPerKn());
    Stepper stepper = new Stepper(train, train.resistance(), track, in.adhesion);
    ForceBalance balance = new ForceBalance(train, in.adhesion);
    for (double at = 517; at < Scenario.LENGTH_M; at += 1013) {
      for (double mps = 0.7; mps < 30; mps += 3.1) {
        stepper.place(0, at, mps);
        for (int notch = -1; notch < train.effort().size(); notch++) {
          assertThat(balance.accelerationMps2(notch, mps, track.at(at)))
              .isCloseTo(stepper.accelerationInNotch(notch), within(1e-8));
        }
      }
    }
  }
}
