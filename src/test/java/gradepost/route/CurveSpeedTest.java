package gradepost.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.units.Length;
import gradepost.units.Speed;
import org.junit.jupiter.api.Test;

/** Cant and speed on curves; from memory, the constant re-derived. */
class CurveSpeedTest {
  /** 100 km/h on 600 m: 197.0 mm. */
  @Test
  void equilibrium_cant() {
    Length cant = CurveSpeed.equilibriumCant(Speed.ofKmh(100), new Length(600));
    assertThat(cant.metres() * 1000).isCloseTo(197.0, within(0.5));
    double derived = 1502 / (3.6 * 3.6 * 9.80665);
    assertThat(cant.metres() * 1000 * 600 / 1e4).isCloseTo(derived, within(0.005));
  }

  /** R 200, E 100, D 90: 56.5 km/h; R 400, E 150, D 110: 93.5 km/h. */
  @Test
  void permissible_speed() {
    assertThat(CurveSpeed.permissible(new Length(200), new Length(0.100), new Length(0.090)).kmh())
        .isCloseTo(56.5, within(0.1));
    assertThat(CurveSpeed.permissible(new Length(400), new Length(0.150), new Length(0.110)).kmh())
        .isCloseTo(93.5, within(0.1));
  }
}
