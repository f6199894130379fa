package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * Validation: what a curve needs of cant by the rail centres of its route and the limits of the
 * policy, from the files to the words of the check.
 */
class CantTest {
  private static final String CURVES = "curves:\n";
  private static final String TRACK =
      """
      track:
        cant: {value: %s, for: design}
        cant-at-platform: {value: %s, for: design}
        cant-deficiency: {value: %s, for: design}
        cant-excess: {value: %s, for: design}
      """;

  private static String route(String gauge, String curve) {
    return Fixture.good()
        .text(Fixture.ROUTE)
        .replace("gauge: 1435 mm\nrail-centres: 1502 mm\n", gauge)
        .replace(CURVES, CURVES + "  - {from: 0m 62ch, to: 0m 69ch, hand: left, " + curve + "}\n");
  }

  private static String found(String route) {
    return Fixture.good()
        .put(Fixture.ROUTE, route)
        .sources()
        .route(Fixture.ROUTE)
        .problems()
        .text()
        .replaceAll("line/route.yaml:\\d+:\\d+: ", "");
  }

  private static String found(String route, String track) {
    Fixture fixture = Fixture.good().put(Fixture.ROUTE, route);
    String policy = fixture.text(Fixture.POLICY).replaceFirst("(?s)\\ntrack:.*", "\n" + track);
    return fixture
        .put(Fixture.POLICY, policy)
        .sources()
        .pack(Fixture.PACK)
        .problems()
        .text()
        .replaceAll("line/route.yaml:\\d+:\\d+: ", "");
  }

  /**
   * R 1,746.40 m, rail centres 1,511.3 mm, cant 152.4 mm, 125 mph: 123.1 mm (a worked example in a
   * public article on cant deficiency); the cant itself is above 150 mm.
   */
  @Test
  void theWorkedExampleComesOutOfTheFiles() {
    String route =
        route("rail-centres: 1511.3 mm\n", "radius: 1746.40 m, cant: 152.4 mm")
            .replace("speed: 50 mph\n", "speed: 125 mph\n");
    assertThat(found(route))
        .contains(
            "warning: the curve from 0m 62ch to 0m 69ch has 1746 m radius and 152 mm of cant. 125 mph (Line speed) needs 123 mm of cant deficiency; allowed: 110 mm at most, that is")
        .contains("has 152 mm of cant; allowed: 150 mm at most [cant-high]");
    assertThat(found(route, TRACK.formatted("160 mm", "110 mm", "123.2 mm", "160 mm")))
        .doesNotContain("0m 62ch");
    assertThat(found(route, TRACK.formatted("160 mm", "110 mm", "123.1 mm", "160 mm")))
        .contains("needs 123 mm of cant deficiency;");
  }

  /**
   * By hand, 50 mph = 22.352 m/s on 17 ch (342 m), cant 100 mm: 499.61 × s/(9.80665 × 342) − 100.
   * Standard 123.7; metre gauge with 1,060 mm 57.9; 1,067 mm with 1,127 mm 67.9; 1,676 mm with
   * 1,750 mm 160.7 mm, permitting 0.29·√(342 × 210 × 1502/1750) = 72.0 km/h, 44.7 mph.
   */
  @Test
  void otherGaugesNeedTheirOwn() {
    String curve = "radius: 17 ch, cant: 100 mm";
    assertThat(found(route("", curve))).contains("needs 124 mm");
    assertThat(found(route("gauge: 1000 mm\nrail-centres: 1060 mm\n", curve)))
        .doesNotContain("0m 62ch");
    assertThat(found(route("gauge: 1067 mm\nrail-centres: 1127 mm\n", curve)))
        .doesNotContain("0m 62ch");
    assertThat(found(route("gauge: 1676 mm\nrail-centres: 1750 mm\n", curve)))
        .contains("needs 161 mm")
        .contains("110 mm at most, that is 40 mph");
  }

  /** 0.29·√(342 × 180) = 72.0 km/h, 44.7 mph, with 80 mm of deficiency. */
  @Test
  void theLimitsOfThePolicyAreThoseOfThePack() {
    String route = route("", "radius: 17 ch, cant: 100 mm");
    assertThat(found(route, "")).contains("allowed: 110 mm at most, that is 45 mph [curve-speed]");
    assertThat(found(route, TRACK.formatted("150 mm", "110 mm", "124 mm", "110 mm"))).isEmpty();
    assertThat(found(route, TRACK.formatted("90 mm", "110 mm", "80 mm", "110 mm")))
        .contains("has 100 mm of cant; allowed: 90 mm at most [cant-high]")
        .contains("allowed: 80 mm at most, that is 40 mph [curve-speed]");
  }

  /**
   * By hand: 20 ch (402.3 m) at 50 mph: 499.61 × 1502/(9.80665 × 402.336) = 190.2 mm; at the 15 mph
   * of another class of train 44.96 × 1502/3945.6 = 17.1 mm, so that a cant of 140 mm is 122.9 mm
   * too much for it.
   */
  @Test
  void cantThatIsTooMuchForASlowTrain() {
    String route =
        route("", "radius: 20 ch, cant: 140 mm")
            .replace(
                "speed: 50 mph\n",
                "speed: 50 mph\n    differential: [{class: GOODS, speed: 15 mph}]\n");
    assertThat(found(route))
        .isEqualTo(
            "warning: the curve from 0m 62ch to 0m 69ch has 402 m radius and 140 mm of cant. 15 mph (Line speed) has 123 mm of cant excess; allowed: 110 mm at most [cant-excess]\n");
    assertThat(found(route, TRACK.formatted("150 mm", "110 mm", "110 mm", "123 mm"))).isEmpty();
  }

  @Test
  void aGaugeMakesUpNoRailCentres() {
    assertThat(found(route("gauge: 1676 mm\n", "radius: 2 mi")))
        .isEqualTo(
            "error: gauge is not standard, and rail-centres is not given; allowed:"
                + " rail-centres beside it, such as 1502 mm for 1435 mm\n");
    assertThat(found(route("gauge: 1435 mm\n", "radius: 2 mi"))).isEmpty();
    assertThat(found(route("gauge: 1000 mm\nrail-centres: 1502 mm\n", "radius: 2 mi")))
        .isEqualTo(
            "error: rail-centres is 502 mm more than gauge; allowed: 30 mm to 130 mm more than"
                + " gauge, the width of a rail head\n");
    assertThat(found(route("rail-centres: 1060\n", "radius: 2 mi")))
        .startsWith("error: rail-centres \"1060\" has no unit; allowed: a length, such as");
  }
}
