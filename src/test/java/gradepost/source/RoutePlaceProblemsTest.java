package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: one slip in a route file gives one answer, word for word, at its place. */
class RoutePlaceProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.ROUTE, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "two directions of one name",
            "backward: Up}",
            "backward: «Down}",
            "error: both directions have the same name; allowed: two names"),
        slip(
            "section without length",
            "from: 0m 10ch, to: 2m 00ch}",
            "from: 0m 10ch, to: «0m 10ch}",
            "error: the section is shorter than 1 m; allowed: two mileages that differ"),
        slip(
            "section named twice",
            "name: Harbour, from",
            "name: «Valley, from",
            "error: the name \"Valley\" is given twice under sections, first on line 7, column 12; allowed: each name once"),
        slip(
            "line named twice",
            "name: Up Main",
            "name: «Down Main",
            "error: the name \"Down Main\" is given twice under lines, first on line 11, column 12; allowed: each name once"
                + "\n"
                + "line/route.yaml:69:17: error: an entry of lines \"Up Main\" is not known on this route; allowed: Down Main, Siding"),
        slip(
            "station code twice",
            "code: HQY",
            "code: «WLN",
            "error: the code \"WLN\" is given twice under stations, first on line 54, column 11; allowed: each code once"),
        slip(
            "code too long",
            "code: HQY",
            "code: «HARROWQ",
            "error: \"HARROWQ\" is too long; allowed: a short name of up to six letters"),
        slip(
            "platform twice",
            "number: \"2\"",
            "number: «\"1\"",
            "error: the number \"1\" is given twice under platforms, first on line 56, column 17; allowed: each number once"),
        slip(
            "kilometres on a route of miles",
            "from: 1m 10ch, to: 1m 40ch",
            "from: «1.800 km, to: 1m 40ch",
            "error: from \"1.800 km\" mixes units: this route is in miles; allowed: mileages as 3m 24ch and speeds in mph"),
        slip(
            "km/h on a route of miles",
            "    speed: 50 mph",
            "    speed: «80 km/h",
            "error: speed \"80 km/h\" mixes units: this route is in miles; allowed: mileages as 3m 24ch and speeds in mph"),
        slip(
            "off the route",
            "from: 1m 10ch, to: 1m 40ch",
            "from: «3m 10ch, to: 1m 40ch",
            "error: from 3m 10ch is off the route; allowed: Valley from 0m 10ch to 2m 00ch; Mill from 12m 20ch to 11m 20ch; Harbour from 0m 00ch to 0m 60ch"),
        slip(
            "on two sections",
            "from: {section: Valley, at: 0m 10ch}, to: 1m 00ch",
            "from: «0m 20ch, to: 1m 00ch",
            "error: from 0m 20ch is on Valley and on Harbour; allowed: a place with its section"
                + "\n"
                + "  Maybe {section: Valley, at: 0m 20ch}"),
        slip(
            "no such section",
            "buffer-stops: {section: Harbour",
            "buffer-stops: {section: «Harbuor",
            "error: there is no section \"Harbuor\"; allowed: Valley, Mill, Harbour"
                + "\n"
                + "  Maybe Harbour"),
        slip(
            "off its section",
            "buffer-stops: {section: Harbour, at: 0m 58ch",
            "buffer-stops: {section: Harbour, at: «0m 61ch",
            "error: 0m 61ch is off the section Harbour; allowed: Harbour from 0m 00ch to 0m 60ch"),
        slip(
            "platform outside the route",
            "        to: {section: Harbour, at: 0m 57ch}",
            "        to: {section: Harbour, at: «0m 70ch}",
            "error: 0m 70ch is off the section Harbour; allowed: Harbour from 0m 00ch to 0m 60ch"),
        slip(
            "from after to",
            "from: 1m 60ch, to: 1m 70ch",
            "from: 1m 60ch, to: «1m 50ch",
            "error: to comes before from for a train in the forward direction; allowed: from first, then to, in the order of the sections"
                + "\n"
                + "  Maybe exchange them"),
        slip(
            "from and to the same",
            "from: 1m 60ch, to: 1m 70ch",
            "from: 1m 60ch, to: «1m 60ch",
            "error: from and to are the same place; allowed: from first, then to, in the order of the sections"),
        slip(
            "gap in the gradients",
            "{from: 1m 00ch, to: 12m 20ch",
            "{from: «1m 10ch, to: 12m 20ch",
            "error: no gradient from 1m 00ch to 1m 10ch; allowed: gradients that cover the route without gap or overlap"),
        slip(
            "gradients overlap",
            "{from: 1m 00ch, to: 12m 20ch",
            "{from: «0m 70ch, to: 12m 20ch",
            "error: two gradients from 0m 70ch to 1m 00ch; allowed: gradients that cover the route without gap or overlap"),
        slip(
            "gradients end early",
            "to: {section: Harbour, at: 0m 60ch}, gradient",
            "to: {section: Harbour, at: 0m 50ch}, gradient",
            "line/route.yaml:21:3: error: no gradient from 0m 50ch (Harbour) to the end of the route at 0m 60ch (Harbour); allowed: gradients that cover the route without gap or overlap"),
        slip(
            "curves overlap",
            "from: 1m 60ch, to: 1m 70ch",
            "from: «1m 30ch, to: 1m 70ch",
            "error: two curves from 1m 30ch to 1m 40ch; allowed: one curve at a place"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
