package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: one slip in a stock file gives one answer, word for word, at its place. */
class BrakeProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.STOCK, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "steps do not rise",
            "control: {steps: [30 psi, 60 psi]}",
            "control: «{steps: [60 psi, 60 psi]}",
            "error: the pressures of the steps do not rise here; allowed: each above the one before"),
        slip(
            "control unknown",
            "control: continuous",
            "control: «continous",
            "error: control is \"continous\"; allowed: continuous, or a stepped control with the keys steps"
                + "\n"
                + "  Maybe continuous"),
        slip(
            "full above what the pipe gives",
            "control: continuous, full: 50 psi, pipe",
            "control: continuous, full: «60 psi, pipe",
            "error: full is 60 psi (4.1 bar), and the pipe gives 50 psi (3.4 bar) at most; allowed: what the pipe gives, or less"),
        slip(
            "two service brakes",
            "role: fallback",
            "role: «service",
            "error: a second brake system has the role service; allowed: one for each role"),
        slip(
            "no service brake",
            "short: EP, role: service",
            "short: EP, role: fallback",
            "stock/unit.yaml:22:3: error: no brake system has the role service; allowed: one of them"
                + "\n"
                + "stock/unit.yaml:25:48: error: a second brake system has the role fallback; allowed: one for each role"),
        slip(
            "short name twice",
            "short: Auto",
            "short: «EP",
            "error: the short \"EP\" is given twice under systems, first on line 24, column 40; allowed: each short once"),
        slip(
            "yes or no",
            "notching-down: no",
            "notching-down: «never",
            "error: notching-down \"never\" is not known; allowed: yes, no"),
        slip(
            "notch twice",
            "name: Series",
            "name: «Shunt",
            "error: the name \"Shunt\" is given twice under notches, first on line 19, column 14; allowed: each name once"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
