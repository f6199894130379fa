package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: one slip in a route file gives one answer, word for word, at its place. */
class RouteElementProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.ROUTE, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "speeds leave a stretch",
            "    to: {section: Harbour, at: 0m 60ch}\n    speed",
            "    to: {section: Harbour, at: 0m 40ch}\n    speed",
            "line/route.yaml:28:3: error: no permissible speed for Down trains from 0m 40ch (Harbour) to 0m 60ch (Harbour) on Down Main; allowed: permissible speeds that leave nothing uncovered"
                + "\n"
                + "line/route.yaml:28:3: error: no permissible speed for Up trains from 0m 40ch (Harbour) to 0m 60ch (Harbour) on Siding; allowed: permissible speeds that leave nothing uncovered"),
        slip(
            "board for the other direction",
            "at: 1m 05ch, direction: Down",
            "at: 1m 05ch, direction: «Up",
            "error: a board for Up trains, but the restriction does not apply to them; allowed: a direction of the restriction"),
        slip(
            "unknown direction",
            "at: 1m 05ch, direction: Down",
            "at: 1m 05ch, direction: «Dwon",
            "error: direction \"Dwon\" is not known on this route; allowed: Down, Up"
                + "\n"
                + "  Maybe Down"),
        slip(
            "unknown line",
            "lines: [Down Main]\n    speed",
            "lines: [«Down Mian]\n    speed",
            "error: an entry of lines \"Down Mian\" is not known on this route; allowed: Down Main, Up Main, Siding"
                + "\n"
                + "  Maybe Down Main"),
        slip(
            "class twice",
            "{class: MU, speed: 30 mph}",
            "{class: MU, speed: 30 mph}\n      - {class: «MU, speed: 35 mph}",
            "error: the class \"MU\" is given twice under differential, first on line 39, column 17; allowed: each class once"),
        slip(
            "stop mark for others",
            "{cars: 8, at: 0m 76ch, direction: Down}",
            "{cars: 8, at: 0m 76ch, direction: «Up}",
            "error: a stop mark for Up trains, but they do not use the platform; allowed: a direction of the platform"),
        slip(
            "stop mark twice",
            "{cars: 8, at: 0m 76ch",
            "«{cars: 4, at: 0m 76ch",
            "error: a second stop mark for 4 cars of Down trains; allowed: one for each number of cars and direction"),
        slip(
            "cars with a unit",
            "{cars: 8,",
            "{cars: «8 cars,",
            "error: cars \"8 cars\" has a unit; allowed: a number of cars from 1 to 40"
                + "\n"
                + "  Maybe 8"),
        slip(
            "signal against the line",
            "line: Down Main",
            "line: Up Main",
            "line/route.yaml:88:16: error: signal WL 12 is for Down trains, but they do not run on Up Main; allowed: a direction for which the line is signalled"),
        slip(
            "platform without a line",
            "lines: [Down Main]\n        side",
            "lines: [Up Main]\n        side",
            "line/route.yaml:56:9: error: no line leads to platform 1 of Weir Lane; allowed: lines signalled in a direction of the platform"),
        slip(
            "structure with place and stretch",
            "name: Cut Bridge, at: 11m 40ch",
            "name: Cut Bridge, from: 11m 41ch, at: 11m 40ch",
            "line/route.yaml:97:5: error: a structure needs one place or a stretch; allowed: either at, or from and to"),
        slip(
            "structure the wrong way round",
            "from: 1m 50ch, to: 1m 58ch",
            "from: 1m 50ch, to: «1m 48ch",
            "error: to comes before from for a train in the forward direction; allowed: from first, then to, in the order of the sections"
                + "\n"
                + "  Maybe exchange them"),
        slip(
            "unknown units",
            "units: miles",
            "units: «mile",
            "error: units \"mile\" is not known; allowed: miles, metric" + "\n" + "  Maybe miles"),
        slip(
            "another kind of file",
            "gradepost: route",
            "gradepost: «stock",
            "error: this is a stock file, where a route file belongs; allowed: gradepost: route"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
