package gradepost.source;

import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: one slip in a file of notices gives one answer, word for word, at its place. */
class NoticeProblemsTest {

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isReportedAtItsPlace(String slip, String from, String to, String expected) {
    Expect.problem(Fixture.NOTICES, from, to, expected);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        slip(
            "reference twice",
            "reference: T 26/090",
            "reference: «T 26/104",
            "error: the reference \"T 26/104\" is given twice under notices, first on line 3, column 16; allowed: each reference once"),
        slip(
            "until before imposed",
            "until: 2027-01-15 04:00",
            "until: «2026-01-15 04:00",
            "error: until 2026-01-15 04:00 is not after imposed 2026-11-10 04:00; allowed: imposed first, then until"),
        slip(
            "date without hour",
            "until: 2027-01-15 04:00",
            "until: «2027-01-15",
            "error: until \"2027-01-15\" lacks the hour; allowed: a date and hour, such as 2026-11-30 04:00, or further notice"
                + "\n"
                + "  Maybe 2027-01-15 00:00"),
        slip(
            "date turned round",
            "imposed: 2026-11-10 04:00",
            "imposed: «10/11/2026 04:00",
            "error: imposed \"10/11/2026 04:00\" is not a date and hour; allowed: a date and hour, such as 2026-11-30 04:00"
                + "\n"
                + "  Maybe 2026-11-10 04:00"),
        slip(
            "no such day",
            "imposed: 2026-11-10 04:00",
            "imposed: «2026-02-30 04:00",
            "error: imposed \"2026-02-30 04:00\" is not a date and hour; allowed: a date and hour, such as 2026-11-30 04:00"),
        slip(
            "further notice",
            "until: further notice",
            "until: «until further notice",
            "error: until \"until further notice\" is not a date and hour; allowed: a date and hour, such as 2026-11-30 04:00, or further notice"
                + "\n"
                + "  Maybe further notice"),
        slip(
            "hours of nothing",
            "hours: 22:00 to 05:30",
            "hours: «05:00 to 05:00",
            "error: hours \"05:00 to 05:00\" begin and end at one time, which may mean all day or never; allowed: two times that differ; for all day, no hours"),
        slip(
            "hours",
            "hours: 22:00 to 05:30",
            "hours: «22:00-05:30",
            "error: hours \"22:00-05:30\" is not a range of hours; allowed: hours of the day, such as 22:00 to 05:30"
                + "\n"
                + "  Maybe 22:00 to 05:30"),
        slip(
            "status",
            "status: in force",
            "status: «in forse",
            "error: status \"in forse\" is not known; allowed: planned, in force, eased, extended, withdrawn"
                + "\n"
                + "  Maybe in force"),
        slip(
            "off the route",
            "from: 1m 75ch",
            "from: «3m 00ch",
            "error: from 3m 00ch is off the route; allowed: Valley from 0m 10ch to 2m 00ch; Mill from 12m 20ch to 11m 20ch; Harbour from 0m 00ch to 0m 60ch"),
        slip(
            "bare speed",
            "    speed: 20 mph",
            "    speed: «20",
            "error: speed \"20\" has no unit; allowed: a speed, such as 40 mph or 64 km/h, from 1 km/h to 400 km/h"
                + "\n"
                + "  Maybe 20 mph"),
        slip(
            "board for the other direction",
            "at: 1m 45ch, direction: Down",
            "at: 1m 45ch, direction: «Up",
            "error: a board for Up trains, but the restriction does not apply to them; allowed: a direction of the restriction"),
        slip(
            "none beside notices",
            "gradepost: restrictions",
            "gradepost: restrictions\nnone: «none in force",
            "error: none is stated beside notices; allowed: one or the other"));
  }

  private static Arguments slip(String slip, String from, String to, String expected) {
    return arguments(slip, from, to, expected);
  }
}
