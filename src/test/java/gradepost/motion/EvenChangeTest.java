package gradepost.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Property. Against uniform acceleration in school-book form: v = v0 + at, s = v0 t + at²/2. */
class EvenChangeTest {
  private static final double FROM_M = 250;
  private static final double FROM_MPS = 24;
  private static final double MPS2 = -0.7;

  @Test
  void speedShareAndTimeAreThoseOfUniformAcceleration() {
    double wholeM = metres(20);
    for (double t = 0; t <= 30; t += 0.5) {
      double mps = FROM_MPS + MPS2 * t;
      double at = FROM_M + metres(t);
      assertThat(EvenChange.speedMps(FROM_M, FROM_MPS, FROM_M + wholeM, FROM_MPS + MPS2 * 20, at))
          .isCloseTo(mps, within(1e-9));
      assertThat(EvenChange.shareAt(FROM_MPS, FROM_MPS + MPS2 * 20, mps))
          .isCloseTo(metres(t) / wholeM, within(1e-9));
      assertThat(EvenChange.seconds(metres(t), FROM_MPS, mps)).isCloseTo(t, within(1e-9));
    }
  }

  @Test
  void aTrainThatWouldStandBeforeDoesNotRollBack() {
    assertThat(EvenChange.speedMps(0, 10, 100, 0, 130)).isZero();
  }

  @Test
  void atOnePlaceTheSpeedIsThatOfThePlace() {
    assertThat(EvenChange.speedMps(40, 12, 40, 12, 40)).isEqualTo(12);
  }

  private static double metres(double seconds) {
    return FROM_MPS * seconds + MPS2 * seconds * seconds / 2;
  }
}
