package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: the register knows which restrictions stand, until when, and in which packs. */
@Tag("slow")
class NoticesCommandTest {
  @TempDir Path folder;

  @Test
  void theListTellsWhatStandsAndWhatEndsSoon() throws Exception {
    Clerk clerk = new Clerk(folder).at("2026-11-29T09:00");
    clerk.register(1, "notices");
    clerk.inForce(
        Clerk.entry("T 1", 900, 1100, 30, "2026-11-26 04:00", "2026-12-24 04:00")
            + Clerk.entry("T 2", 1400, 1500, 40, "2026-11-26 04:00", "further notice")
            + Clerk.entry("T 3", 2000, 2100, 40, "2026-12-02 04:00", "2027-01-15 04:00")
            + Clerk.entry("T 4", 2600, 2700, 40, "2026-11-26 04:00", "2026-11-28 04:00"));
    clerk.enter();
    assertThat(clerk.register(0, "notices", "--csv"))
        .isEqualTo(
            "notice,route,where,speed,from,until,state,issues\n"
                + row("T 4,X,2.60 km to 2.70 km,40 km/h,2026-11-26 04:00,2026-11-28 04:00,ended")
                + row("T 1,X,0.90 km to 1.10 km,30 km/h,2026-11-26 04:00,2026-12-24 04:00,in force")
                + row("T 3,X,2.00 km to 2.10 km,40 km/h,2026-12-02 04:00,2027-01-15 04:00,begins")
                + row("T 2,X,1.40 km to 1.50 km,40 km/h,2026-11-26 04:00,further notice,in force"));
    assertThat(clerk.register(0, "notices", "--days", "7", "--json"))
        .contains("\"notice\" : \"T 3\"", "\"notice\" : \"T 4\"", "\"issues\" : \"0000/1\"")
        .doesNotContain("T 1", "T 2");
    assertThat(clerk.register(0, "notices", "--days", "2")).contains("T 4").doesNotContain("T 3");

    clerk.register(2, "notices", "--days", "x");
    assertThat(clerk.err).contains("\"x\" is not a number; allowed: a whole number, such as 28");
    assertThat(clerk.err).endsWith("For help: gradepost register notices --help\n").hasLineCount(2);
    clerk.register(2, "notices", "--days", "-1");

    String calendar = clerk.register(0, "notices", "--ical");
    assertThat(calendar).isEqualTo(clerk.register(0, "notices", "--ical"));
    assertThat(calendar).contains("DTSTART:20261224T040000\r\n").doesNotContain("TZID");
    assertThat(
            Biweekly.parse(calendar).first().getEvents().stream()
                .map(e -> e.getSummary().getValue())
                .collect(Collectors.toList()))
        .containsExactly(
            "ends: T 1, 30 km/h, 0.90 km to 1.10 km, Invented line 000",
            "begins: T 3, 40 km/h, 2.00 km to 2.10 km, Invented line 000",
            "ends: T 3, 40 km/h, 2.00 km to 2.10 km, Invented line 000");
  }

  private static String row(String text) {
    return text.replace("X", "Invented line 000") + ",0000/1\n";
  }
}
