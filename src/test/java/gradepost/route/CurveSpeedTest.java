package gradepost.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.units.Length;
import gradepost.units.Speed;
import org.junit.jupiter.api.Test;

/** Validation: cant and speed on curves. */
class CurveSpeedTest {
  private static final Length STANDARD = CurveSpeed.STANDARD_RAIL_CENTRES;

  private static double equilibriumMm(Speed speed, double radiusM, double centresMm) {
    return CurveSpeed.equilibriumCant(speed, new Length(radiusM), new Length(centresMm / 1000))
            .metres()
        * 1000;
  }

  /** 100 km/h on 600 m: 197.0 mm; from memory, the constant 11.82 re-derived. */
  @Test
  void equilibrium_cant() {
    double cant = equilibriumMm(Speed.ofKmh(100), 600, 1502);
    assertThat(cant).isCloseTo(197.0, within(0.5));
    assertThat(cant * 600 / 1e4).isCloseTo(11.82, within(0.005));
  }

  /**
   * R 1,746.40 m, rail centres 1,511.3 mm, cant 152.4 mm, 125 mph: cant deficiency 123.1 mm (a
   * worked example in a public article on cant deficiency); with one fixed gauge 121.5 mm.
   */
  @Test
  void cant_deficiency_takes_the_rail_centres_of_the_route() {
    assertThat(equilibriumMm(Speed.ofMph(125), 1746.40, 1511.3) - 152.4)
        .isCloseTo(123.1, within(0.5));
    assertThat(equilibriumMm(Speed.ofMph(125), 1746.40, 1502) - 152.4)
        .isCloseTo(121.5, within(0.1));
  }

  /**
   * By hand, s·v²/(g·R). Metre gauge: 30 km/h is 8.3333 m/s, 1060 × 69.444/(9.80665 × 100) = 75.06
   * mm. 1,067 mm: 80 km/h, 1127 × 493.83/(9.80665 × 400) = 141.88 mm. 1,676 mm: 110 km/h, 1750 ×
   * 933.64/(9.80665 × 875) = 190.41 mm. The lengths between rail centres are examples.
   */
  @Test
  void other_gauges() {
    assertThat(equilibriumMm(Speed.ofKmh(30), 100, 1060)).isCloseTo(75.06, within(0.01));
    assertThat(equilibriumMm(Speed.ofKmh(80), 400, 1127)).isCloseTo(141.88, within(0.01));
    assertThat(equilibriumMm(Speed.ofKmh(110), 875, 1750)).isCloseTo(190.41, within(0.01));
  }

  private static double permissibleKmh(double radiusM, double cantMm, double deficiencyMm) {
    return permissible(radiusM, cantMm, deficiencyMm, STANDARD).kmh();
  }

  private static Speed permissible(
      double radiusM, double cantMm, double deficiencyMm, Length centres) {
    return CurveSpeed.permissible(
        new Length(radiusM), new Length(cantMm / 1000), new Length(deficiencyMm / 1000), centres);
  }

  /** R 200, E 100, D 90: 56.5 km/h; R 400, E 150, D 110: 93.5 km/h; from memory. */
  @Test
  void permissible_speed() {
    assertThat(permissibleKmh(200, 100, 90)).isCloseTo(56.5, within(0.1));
    assertThat(permissibleKmh(400, 150, 110)).isCloseTo(93.5, within(0.1));
  }

  /** What is permitted needs no more than the deficiency allowed, whatever the gauge. */
  @Test
  void a_permissible_speed_keeps_the_deficiency() {
    for (double centres : new double[] {1060, 1127, 1502, 1511.3, 1750}) {
      Speed speed = permissible(400, 100, 110, new Length(centres / 1000));
      assertThat(equilibriumMm(speed, 400, centres)).isBetween(207.0, 210.0);
    }
  }
}
