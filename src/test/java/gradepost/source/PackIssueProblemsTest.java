package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: one slip in a pack file, by itself or against what it names, gives one answer. */
class PackIssueProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.PACK, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "backslashes",
            "stock: ../stock/unit.yaml",
            "stock: «..\\stock\\unit.yaml",
            "error: the file \"..\\stock\\unit.yaml\" is not named as seen from this one; allowed: a relative name with slashes, such as ../stock/unit.yaml"
                + "\n"
                + "  Maybe ../stock/unit.yaml"),
        slip(
            "number of issue",
            "number: 3",
            "number: «three",
            "error: number \"three\" is not a number; allowed: a number of issue from 1 to 99999"),
        slip(
            "checked-by left open",
            "checked-by: driver instructor",
            "checked-by:«",
            "error: checked-by is empty; allowed: a person by office"),
        slip(
            "the wrong file",
            "policy: ../policy/depot.yaml",
            "policy: ../stock/unit.yaml",
            "stock/unit.yaml:1:12: error: this is a stock file, where a policy file belongs; allowed: gradepost: policy"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
