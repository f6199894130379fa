package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: one slip in a pack file, by itself or against what it names, gives one answer. */
class PackNameProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.PACK, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "station unknown",
            "{station: Weir Lane, platform: \"1\"}",
            "{station: «Wier Lane, platform: \"1\"}",
            "error: there is no station \"Wier Lane\"; allowed: Weir Lane, Harrow Quay"
                + "\n"
                + "  Maybe Weir Lane"),
        slip(
            "platform unknown",
            "{station: Weir Lane, platform: \"1\"}",
            "{station: Weir Lane, platform: «\"3\"}",
            "error: there is no platform \"3\" at Weir Lane; allowed: 1, 2"),
        slip(
            "platform of the other direction",
            "{station: Weir Lane, platform: \"1\"}",
            "{station: Weir Lane, platform: «\"2\"}",
            "error: platform 2 of Weir Lane is not reached by Down trains on the lines taken; allowed: a platform of their lines and direction"),
        slip(
            "formation unknown",
            "formations: [4-car, 2-car]",
            "formations: [4-car, «8-car]",
            "error: the stock has no formation \"8-car\"; allowed: 4-car, 2-car"),
        slip(
            "formation of an item unknown",
            "{formation: 2-car, item",
            "{formation: «3-car, item",
            "error: the stock has no formation \"3-car\"; allowed: 4-car, 2-car"),
        slip(
            "formation twice",
            "formations: [4-car, 2-car]",
            "formations: [4-car, «4-car]",
            "error: formation \"4-car\" is listed twice; allowed: each formation once"),
        slip(
            "line unknown",
            "lines: [Down Main]",
            "lines: [«Dwon Main]",
            "error: there is no running line \"Dwon Main\"; allowed: Down Main, Up Main, Siding"
                + "\n"
                + "  Maybe Down Main"),
        slip(
            "line of the other direction",
            "lines: [Down Main]",
            "lines: [Down Main, «Up Main]",
            "error: Down trains are not signalled on Up Main; allowed: lines signalled for them"),
        slip(
            "lines do not reach",
            "lines: [Siding, Up Main]",
            "lines: «[Up Main]",
            "error: the lines taken by Up trains leave out 12m 00ch to 0m 50ch (Harbour); allowed: lines that reach from the first call to the last"),
        slip(
            "junction unknown",
            "{Millbeck Junction: Siding}",
            "{«Milbeck Junction: Siding}",
            "error: there is no junction \"Milbeck Junction\"; allowed: Millbeck Junction"
                + "\n"
                + "  Maybe Millbeck Junction"),
        slip(
            "way unknown",
            "{Millbeck Junction: Siding}",
            "{Millbeck Junction: «Sidings}",
            "error: there is no route \"Sidings\" through Millbeck Junction; allowed: Main, Siding"
                + "\n"
                + "  Maybe Siding"),
        slip(
            "junction of the other direction",
            "lines: [Down Main]",
            "lines: [Down Main]\n    junctions: {Millbeck Junction: «Main}",
            "error: junction Millbeck Junction is not for Down trains; allowed: junctions that they meet"),
        slip(
            "direction unknown",
            "direction: Up",
            "direction: «Upp",
            "error: there is no direction \"Upp\"; allowed: Down, Up" + "\n" + "  Maybe Up"),
        slip(
            "direction twice",
            "direction: Up",
            "direction: «Down",
            "error: the direction \"Down\" is given twice under directions, first on line 8, column 16; allowed: each direction once"),
        slip(
            "one call",
            "      - {station: Weir Lane, platform: \"1\"}\n      - {station",
            "      «- {station",
            "error: calls has 1 entry; allowed: 2 at least"),
        slip(
            "calls out of order",
            "      - {station: Weir Lane, platform: \"1\"}\n      - {station: Harrow Quay, platform: \"1\"}",
            "      - {station: Harrow Quay, platform: \"1\"}\n      - «{station: Weir Lane, platform: \"1\"}",
            "error: Weir Lane does not come after Harrow Quay for Down trains; allowed: calls in order of travel"),
        slip(
            "no dwell",
            "      - {station: Weir Lane, platform: \"1\"}\n",
            "      - {station: Weir Lane, platform: \"1\"}\n      - «{station: Weir Lane, platform: \"1\"}\n",
            "error: a call between the first and the last lacks the key \"dwell\"; allowed: a time, such as 2 s, 500 ms or 5 min, from 0 s to 60 min"
                + "\n"
                + "line/pack.yaml:12:9: error: Weir Lane does not come after Weir Lane for Down trains; allowed: calls in order of travel"),
        slip(
            "valid-to before valid-from",
            "valid-to: 2027-02-28",
            "valid-to: «2026-02-28",
            "error: valid-to is not after valid-from; allowed: valid-from, then valid-to"),
        slip(
            "known after issued",
            "known-up-to: 2026-11-19",
            "known-up-to: «2026-11-21",
            "error: known-up-to is after issued; allowed: known-up-to, then issued"),
        slip(
            "file not there",
            "route: route.yaml",
            "route: «routes.yaml",
            "error: the file line/routes.yaml cannot be read: there is no such file"),
        slip(
            "file named from elsewhere",
            "stock: ../stock/unit.yaml",
            "stock: «/stock/unit.yaml",
            "error: the file \"/stock/unit.yaml\" is not named as seen from this one; allowed: a relative name with slashes, such as ../stock/unit.yaml"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
