package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: one slip in a policy file, by itself or against the stock, gives one answer at its
 * place.
 */
class PolicyProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.POLICY, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "purpose missing",
            "{value: 2 s, for: asking the next brake}",
            "«{value: 2 s}",
            "error: noticing-time lacks the key \"for\"; allowed: what it is for, in words"),
        slip(
            "value alone",
            "noticing-time: {value: 2 s, for: asking the next brake}",
            "noticing-time: «2 s",
            "error: noticing-time is \"2 s\"; allowed: noticing-time with the keys value, for"),
        slip(
            "bare time",
            "{value: 2 s, for",
            "{value: «2, for",
            "error: value \"2\" has no unit; allowed: a time, such as 2 s, 500 ms or 5 min, from 0 s to 60 s"
                + "\n"
                + "  Maybe 2 s"),
        slip(
            "share of a later case",
            "of: dry",
            "of: «low",
            "error: there is no adhesion case \"low\" before this one; allowed: dry"),
        slip(
            "share of nothing known",
            "of: dry",
            "of: «dri",
            "error: there is no adhesion case \"dri\" before this one; allowed: dry"
                + "\n"
                + "  Maybe dry"),
        slip(
            "coefficient out of range",
            "mu: 0.06",
            "mu: «6",
            "error: mu \"6\" is out of range; allowed: a coefficient from 0.005 to 0.6"),
        slip(
            "case twice",
            "name: low",
            "name: «dry",
            "error: the name \"dry\" is given twice under adhesion, first on line 4, column 12; allowed: each name once"),
        slip(
            "first above main",
            "  first: 15 psi",
            "  first: «30 psi",
            "error: first is above main; allowed: a first application up to main"),
        slip(
            "first is none",
            "  first: 15 psi",
            "  first: «0 psi",
            "error: first is not a brake application; allowed: a pressure above 0"),
        slip(
            "eases do not fall in pressure",
            "{above-target: 3 mph, to: 5 psi, slows-by: 0.2 m/s2}",
            "{above-target: 3 mph, to: «12 psi, slows-by: 0.2 m/s2}",
            "error: the pressures of the eases do not decrease here; allowed: each below the one before"),
        slip(
            "eases do not fall in speed",
            "{above-target: 3 mph, to: 5 psi, slows-by: 0.2 m/s2}",
            "{above-target: «13 mph, to: 5 psi, slows-by: 0.2 m/s2}",
            "error: the speeds of the eases do not decrease here; allowed: each below the one before"),
        slip(
            "first ease not below main",
            "{above-target: 12 mph, to: 12 psi}",
            "{above-target: 12 mph, to: «28 psi}",
            "error: the first ease is not below main; allowed: a pressure below main"),
        slip(
            "no release",
            "{above-target: 2 mph, to: 0 psi}",
            "{above-target: 2 mph, to: 4 psi}",
            "policy/depot.yaml:34:5: error: the technique for a restriction does not end in a release; allowed: a last ease to 0 psi or 0 bar"),
        slip(
            "steps not slower",
            "{before-mark: 20 yd, speed: 5 mph}",
            "{before-mark: 20 yd, speed: «15 mph}",
            "error: the speeds of the steps do not decrease here; allowed: each below the one before"),
        slip(
            "steps not nearer",
            "{before-mark: 20 yd, speed: 5 mph}",
            "{before-mark: «180 yd, speed: 5 mph}",
            "error: the distances of the steps do not decrease here; allowed: each below the one before"),
        slip(
            "on not below off",
            "on-below: {value: 6 mph",
            "on-below: «{value: 1 mph",
            "error: on-below is not more than off-below; allowed: more than off-below"),
        slip(
            "check-to not below check-from",
            "check-to: {value: 5 mph",
            "check-to: «{value: 1 mph",
            "error: check-to is not more than check-from; allowed: more than check-from"),
        slip(
            "main above full service",
            "  main: 28 psi",
            "  main: «51 psi",
            "error: main 51 psi (3.5 bar) is above full service of Invented unit, which is 50 psi (3.4 bar); allowed: full service or less"),
        slip(
            "checking above full service",
            "check-pressure: {value: 12 psi, for: checking}",
            "check-pressure: «{value: 60 psi, for: checking}",
            "error: check-pressure 60 psi (4.1 bar) is above full service of Invented unit, which is 50 psi (3.4 bar); allowed: full service or less"),
        slip(
            "no brake left",
            "isolated-share: {value: 0 %",
            "isolated-share: «{value: 51 %",
            "error: isolated-share isolates 2 of the 2 braked vehicles of 2-car: no brake is left; allowed: a share that, rounded up to whole vehicles, leaves at least one of them"),
        slip(
            "load unknown",
            "value: crush",
            "value: «crushed",
            "error: value \"crushed\" is not known; allowed: tare, seated, crush"
                + "\n"
                + "  Maybe crush"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
