package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: nothing that the clock knows of a pack is passed over. */
@Tag("slow")
class PackDatesTest {
  @TempDir Path folder;
  private Clerk clerk;

  @BeforeEach
  void office() throws Exception {
    clerk = new Clerk(folder).at("2026-11-29T09:00");
  }

  @Test
  void checkAndBriefTellWhatEndedBeginsOrLiesOutside() throws Exception {
    clerk.inForce(
        Clerk.entry("T 1", 900, 1000, 30, "2026-11-18 04:00", "2026-11-28 04:00")
            + Clerk.entry("T 2", 1100, 1200, 40, "2026-12-02 04:00", "further notice")
            + Clerk.entry("T 3", 1300, 1400, 40, "2027-06-02 04:00", "further notice")
            + Clerk.entry("T 4", 2000, 2100, 40, "2026-11-01 04:00", "2026-11-20 04:00")
            + Clerk.entry("T 5", 2200, 2300, 40, "2026-11-26 04:00", "further notice"));
    clerk.types(1, "check", clerk.pack.toString());
    assertThat(clerk.err)
        .contains("warning: T 1 ended on 2026-11-28 04:00, and is still on the papers")
        .contains("note: T 2 begins only on 2026-12-02 04:00")
        .contains("warning: T 3 begins on 2027-06-02 04:00, but the pack is valid to 2027-05-31")
        .contains("note: T 4 ended on 2026-11-20 04:00, and the papers leave it out")
        .contains(
            "note: T 5 was imposed on 2026-11-26 04:00, but the pack was known up to 2026-11");
    clerk.types(0, "brief", clerk.pack.toString(), "--out", clerk.papers());
    assertThat(clerk.err).contains("restrictions.yaml:3:", "T 1 ended on 2026-11-28 04:00");
    assertThat(Path.of(clerk.papers(), "0000-out-3-car.pdf")).exists();
  }

  @Test
  void anExpiredPackIsNotBriefedUnlessItIsWanted() throws Exception {
    clerk.at("2027-05-31T04:00");
    clerk.types(1, "check", clerk.pack.toString());
    assertThat(clerk.err)
        .contains("error: the pack expired on 2027-05-31 04:00; it is now 2027-05-31 04:00");
    clerk.types(1, "brief", clerk.pack.toString(), "--out", clerk.papers());
    assertThat(clerk.err).contains("the pack has expired, and no paper was made");
    assertThat(Path.of(clerk.papers())).doesNotExist();
    clerk.register(1, "enter", clerk.routes.toString(), "--out", clerk.papers());
    assertThat(clerk.err)
        .contains("error: the pack expired on 2027-05-31 04:00, and was not registered; allowed: a")
        .contains(
            "or, if this one is meant, the same with --confirm\n  Maybe set a later valid-to");
    assertThat(clerk.register(0, "issues")).isEqualTo("NONE\n");
    String routes = clerk.routes.toString();
    clerk.register(0, "enter", routes, "--out", clerk.papers(), "--confirm");
    assertThat(clerk.out).contains("0000/1 registered");
    clerk.types(0, "brief", clerk.pack.toString(), "--out", clerk.papers(), "--expired");
    assertThat(clerk.err).contains("warning: the pack expired on 2027-05-31 04:00; it is now 2027");
    assertThat(Path.of(clerk.papers(), "0000-out-3-car.pdf")).exists();
  }

  @Test
  void aNewPackIsValidFromToday() throws Exception {
    Path pack = folder.resolve("pack-new.yaml");
    clerk.types(0, "new", "pack", pack.toString());
    assertThat(Files.readString(pack))
        .contains("valid-from: 2026-11-29 04:00", "valid-to: 2027-05-29 04:00")
        .contains("known-up-to: 2026-11-29 00:00");
  }

  @Test
  void formationsThatDifferInPunctuationAreRefused() throws Exception {
    Path stock = folder.resolve("routes/stock/coast-unit.yaml");
    clerk.edit(clerk.pack, "[3-car]", "[3-car, 3 car]");
    String text = Files.readString(stock);
    int at = text.indexOf("name: 3-car");
    String first = text.substring(text.lastIndexOf("\n", at) + 1, text.indexOf("\n", at) + 1);
    assertThat(first).contains("vehicles");
    Files.writeString(
        stock, text.replace(first, first + first.replace("name: 3-car", "name: 3 car")));
    clerk.types(1, "check", clerk.pack.toString());
    assertThat(clerk.err)
        .contains(
            "error: the formation \"3 car\" would have the same files as \"3-car\"; allowed:");
  }

  @Test
  void twoLinesWithTheSameFileNameShareNoHistory() throws Exception {
    clerk.enter();
    clerk.edit(clerk.pack, "number: 1", "number: 2");
    clerk.edit(clerk.pack.resolveSibling("route.yaml"), "Invented line 000", "Another line");
    clerk.register(1, "enter", clerk.routes.toString(), "--out", clerk.papers());
    assertThat(clerk.err)
        .contains("0000/1 is an issue of “Invented line 000”, and this pack is of “Another line”")
        .contains("Maybe give this pack its own name by a line “id: another-line”. If the route")
        .contains("That issue was made from a file pack-0000.yaml");
    clerk.edit(clerk.pack, "number: 2", "number: 1");
    clerk.office(1, "reissue", clerk.routes.toString(), "--out", clerk.papers());
    assertThat(clerk.err).contains("0000/1 is an issue of “Invented line 000”");
  }
}
