package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import gradepost.stock.BrakeCare;
import gradepost.stock.FailureSign;
import gradepost.stock.GaugeReading;
import gradepost.stock.LeavingTest;
import gradepost.units.Pressure;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: one slip in the tests before leaving, or in a sign of failure, gives one answer, word
 * for word, at its place; what just holds is taken. Of the fixture's brakes EP and Auto give 50
 * psi, the emergency application 60, and the pipe has 70.
 */
class BrakeCareProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.STOCK, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        arguments(
            "a brake that the train has not",
            "{name: continuity, brake: Auto",
            "{name: continuity, brake: «Autos",
            "error: the train has no brake \"Autos\"; allowed: EP, Auto, Emgy\n  Maybe Auto"),
        arguments(
            "a sign of a brake that the train has not",
            "{brake: EP, by: lamp",
            "{brake: «Vacuum, by: lamp",
            "error: the train has no brake \"Vacuum\"; allowed: EP, Auto, Emgy"),
        arguments(
            "a cylinder above full service",
            "from: 45 psi, to: 50 psi",
            "from: 45 psi, to: «50.1 psi",
            "error: the pressure is above what Auto gives, which is 50 psi (3.4 bar); allowed: 0 psi"
                + " to 50 psi (3.4 bar) on the gauge of the cylinder"),
        arguments(
            "a range wholly above full service",
            "from: 45 psi, to: 50 psi",
            "from: «54 psi, to: 58 psi",
            "error: the pressure is above what Auto gives, which is 50 psi (3.4 bar); allowed: 0 psi"
                + " to 50 psi (3.4 bar) on the gauge of the cylinder"),
        arguments(
            "a pipe above its running pressure",
            "from: 68 psi, to: 70 psi",
            "from: 68 psi, to: «72 psi",
            "error: the pressure is above that of the brake pipe, which is 70 psi (4.8 bar); allowed:"
                + " 0 psi to 70 psi (4.8 bar) on the gauge of the pipe"),
        arguments(
            "a sign outside the gauge",
            "from: 0 psi, to: 3 psi",
            "from: 0 psi, to: «200 psi",
            "error: to \"200 psi\" is out of range; allowed: a pressure, such as 50 psi or 3.5 bar,"
                + " from 0 psi to 150 psi"),
        arguments(
            "the ends the wrong way round",
            "from: 0 psi, to: 3 psi",
            "from: 3 psi, to: «0 psi",
            "error: to is not far enough above from to be read on a gauge; allowed: 1.5 psi (0.1 bar)"
                + " above from at least"),
        arguments(
            "narrower than a gauge is read",
            "from: 0 psi, to: 3 psi",
            "from: 0 psi, to: «1.4 psi",
            "error: to is not far enough above from to be read on a gauge; allowed: 1.5 psi (0.1 bar)"
                + " above from at least"),
        arguments(
            "a gauge that is not known",
            "gauge: leading cylinder",
            "gauge: «leading cilinder",
            "error: gauge \"leading cilinder\" is not known; allowed: rear cylinder, rear pipe, leading"
                + " cylinder, leading pipe\n  Maybe leading cylinder"));
  }

  @Test
  void aPipeIsShownOnlyWhereABrakeHasOne() {
    Fixture fixture = Fixture.good();
    String pipe =
        ", pipe: {law: ratio, pressure: 70 psi, pounds-per-pound: 2.5}, recharge: 1 psi/s";
    fixture.put(Fixture.STOCK, fixture.marked(Fixture.STOCK, pipe, ""));
    String marked = fixture.marked(Fixture.STOCK, "gauge: rear pipe", "gauge: «rear pipe");
    assertThat(fixture.sources().pack(Fixture.PACK).problems().text())
        .isEqualTo(
            Fixture.place(Fixture.STOCK, marked)
                + ": error: no brake of the train has a pipe that a gauge could show; allowed: the"
                + " gauge of the cylinder, or a brake with a pipe\n  Maybe rear cylinder\n");
  }

  @Test
  void isReadAsItIsTyped() {
    assertThat(Fixture.good().sources().pack(Fixture.PACK).found().orElseThrow().stock().care())
        .isEqualTo(
            new BrakeCare(
                List.of(
                    new LeavingTest(
                        "continuity",
                        "Auto",
                        List.of(
                            new LeavingTest.Step(
                                "Apply full service.",
                                reading(GaugeReading.Gauge.REAR_CYLINDER, 45, 50)),
                            new LeavingTest.Step(
                                "Release.", reading(GaugeReading.Gauge.REAR_PIPE, 68, 70))))),
                List.of(
                    new FailureSign("EP", FailureSign.By.LAMP, "the lamp is out", Optional.empty()),
                    new FailureSign(
                        "EP",
                        FailureSign.By.GAUGE,
                        "the gauge does not rise",
                        reading(GaugeReading.Gauge.LEADING_CYLINDER, 0, 3)))));
  }

  private static Optional<GaugeReading> reading(GaugeReading.Gauge gauge, double from, double to) {
    return Optional.of(new GaugeReading(gauge, Pressure.ofPsi(from), Pressure.ofPsi(to)));
  }
}
