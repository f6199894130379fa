package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: one slip in a route file gives one answer, word for word, at its place. */
class RouteQuantityProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.ROUTE, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "bare number",
            "radius: 14 ch",
            "radius: «14",
            "error: radius \"14\" has no unit; allowed: a length, such as 20 m, 60 yd, 7 ch or 64 ft 6 in, from 60 m to 100 km"
                + "\n"
                + "  Maybe 14 ch or 14 m"),
        slip(
            "bare speed",
            "    speed: 50 mph",
            "    speed: «50",
            "error: speed \"50\" has no unit; allowed: a speed, such as 40 mph or 64 km/h, from 1 km/h to 400 km/h"
                + "\n"
                + "  Maybe 50 mph"),
        slip(
            "bare mileage",
            "from: 1m 10ch, to: 1m 40ch",
            "from: «1.10, to: 1m 40ch",
            "error: from \"1.10\" has no unit; allowed: a mileage, such as 3m 24ch or 12.460 km"
                + "\n"
                + "  Maybe 1m 10ch"),
        slip(
            "bare gradient",
            "1 in 80 falling",
            "«80",
            "error: gradient \"80\" has no unit; allowed: a gradient, such as 1 in 80 rising, 12.5 permille falling or level, from 1 in 10 falling to 1 in 10 rising"
                + "\n"
                + "  Maybe 1 in 80 rising or 1 in 80 falling"),
        slip(
            "gradient without a way",
            "1 in 80 falling",
            "«1 in 80",
            "error: gradient \"1 in 80\" does not say which way; allowed: a gradient, such as 1 in 80 rising, 12.5 permille falling or level, from 1 in 10 falling to 1 in 10 rising"
                + "\n"
                + "  Maybe 1 in 80 rising or 1 in 80 falling"),
        slip(
            "gradient too steep",
            "1 in 80 falling",
            "«1 in 9 falling",
            "error: gradient \"1 in 9 falling\" is out of range; allowed: a gradient, such as 1 in 80 rising, 12.5 permille falling or level, from 1 in 10 falling to 1 in 10 rising"),
        slip(
            "wrong dimension",
            "radius: 14 ch",
            "radius: «40 psi",
            "error: radius \"40 psi\" is a pressure, not a length; allowed: a length, such as 20 m, 60 yd, 7 ch or 64 ft 6 in, from 60 m to 100 km"),
        slip(
            "unit misspelt",
            "    speed: 50 mph",
            "    speed: «50 MPH",
            "error: speed \"50 MPH\" has an unknown unit \"MPH\"; allowed: a speed, such as 40 mph or 64 km/h, from 1 km/h to 400 km/h"
                + "\n"
                + "  Maybe 50 mph"),
        slip(
            "decimal comma",
            "    speed: 50 mph",
            "    speed: «50,5 mph",
            "error: speed \"50,5 mph\" has a decimal comma; allowed: a speed, such as 40 mph or 64 km/h, from 1 km/h to 400 km/h"
                + "\n"
                + "  Maybe 50.5 mph"),
        slip(
            "radius out of range",
            "radius: 14 ch",
            "radius: «20 m",
            "error: radius \"20 m\" is out of range; allowed: a length, such as 20 m, 60 yd, 7 ch or 64 ft 6 in, from 60 m to 100 km"),
        slip(
            "cant out of range",
            "cant: 75 mm",
            "cant: «250 mm",
            "error: cant \"250 mm\" is out of range; allowed: a length, such as 20 m, 60 yd, 7 ch or 64 ft 6 in, from 0 mm to 200 mm"),
        slip(
            "unknown key",
            "radius: 14 ch, cant",
            "radius: 14 ch, «cannt",
            "error: a curve has no key \"cannt\"; allowed: from, to, hand, radius, cant, check-rail"
                + "\n"
                + "  Maybe cant"),
        slip(
            "missing key",
            "  - {from: 1m 10ch, to: 1m 40ch, hand: left, radius: 14 ch,",
            "  - «{from: 1m 10ch, to: 1m 40ch, radius: 14 ch,",
            "error: a curve lacks the key \"hand\"; allowed: left, right"),
        slip(
            "duplicate key",
            "name: Small line",
            "name: Small line\n«name: Smaller line",
            "error: the key \"name\" is given twice, first on line 2, column 1; allowed: each key once"),
        slip(
            "unknown word",
            "hand: left",
            "hand: «lefft",
            "error: hand \"lefft\" is not known; allowed: left, right" + "\n" + "  Maybe left"),
        slip("empty value", "name: Small line", "name:« ", "error: name is empty; allowed: a name"),
        slip(
            "a list where a text belongs",
            "name: Small line",
            "name: «[Small line]",
            "error: name is a list; allowed: a name"),
        slip(
            "a text where a list belongs",
            "lines: [Down Main]\n    speed",
            "lines: «Down Main\n    speed",
            "error: lines is \"Down Main\"; allowed: a list (1 at least), each the name of a running line of the route"
                + "\n"
                + "  Maybe [Down Main]"),
        slip(
            "a text where a group belongs",
            "directions: {forward: Down, backward: Up}",
            "directions: «Down",
            "error: directions is \"Down\"; allowed: the names of the directions with the keys forward, backward"),
        slip(
            "an empty list",
            "platforms:\n      - number: \"1\"\n        from: {",
            "platforms: «[]\n    plattforms:\n      - number: \"1\"\n        from: {",
            "error: platforms has 0 entries; allowed: 1 at least"
                + "\n"
                + "line/route.yaml:76:5: error: a station has no key \"plattforms\"; allowed: name, code, picture, platforms"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
