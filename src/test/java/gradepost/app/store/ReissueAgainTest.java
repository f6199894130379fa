package gradepost.app.store;

import static gradepost.app.Depot.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.Desk;
import gradepost.app.SyntheticNetwork;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: no change is lost to a driver when runs are repeated, cut short, done pack by pack, or
 * done in the wrong order. One line, one pack for each direction, one file of restrictions.
 */
@Tag("slow")
class ReissueAgainTest {
  @TempDir Path folder;
  private List<Path> packs = List.of();
  private Store store = Store.of("register.db", Optional.empty());

  @BeforeEach
  void network() throws IOException {
    packs = new SyntheticNetwork(folder.resolve("routes"), 2).packs(2, 7);
    store = new Depot(folder).store();
  }

  private Path notice(String reference, int kmh) throws IOException {
    Path file = folder.resolve(reference.replace(' ', '-') + "-" + kmh + ".yaml");
    return Files.writeString(file, SyntheticNetwork.notice(reference, 0, "both", 900, kmh));
  }

  private Answer reissue(Path notice, Path... of) {
    return reissue(notice, false, of);
  }

  private Answer reissue(Path notice, boolean dry, Path... of) {
    return new Depot(folder)
        .reissue(NOON, of.length == 0 ? packs : List.of(of), Optional.of(notice), false, dry);
  }

  private List<List<String>> acts() throws Exception {
    try (Register register = store.open()) {
      return register.list(Question.acts()).rows();
    }
  }

  private Entry latest(String pack) throws Exception {
    try (Register register = store.open()) {
      return register.latest(pack).orElseThrow();
    }
  }

  /** Entered by an earlier version, which took whatever was typed. */
  @Test
  void aNameOfAnOldRegisterThatCannotBePrintedStopsNoReissue() throws Exception {
    assertThat(reissue(notice("T 1", 20), packs.get(0)).problems()).isEmpty();
    try (Register register = store.open()) {
      Register.By by = new Register.By("a clerk", LocalDateTime.of(2026, 11, 25, 12, 0));
      Entry issue = register.latest("0000").orElseThrow();
      Register.By checker = new Register.By("Another clerk", by.when());
      register.checks().checked(checker, issue, issue.papers());
      register.acknowledge(by, issue, "A B");
      register.handOut(by, issue, "7", "Elm");
    }
    try (Connection c = DriverManager.getConnection(store.url());
        Statement change = c.createStatement()) {
      assertThat(change.executeUpdate("UPDATE acknowledgement_entry SET person = '日本'"))
          .isEqualTo(1);
      assertThat(change.executeUpdate("UPDATE copy_entry SET holder = 'El' || char(27) || 'm'"))
          .isEqualTo(1);
    }
    Answer answer = reissue(notice("T 1", 15), packs.get(0));
    assertThat(answer.good()).isTrue();
    assertThat(answer.problems())
        .containsExactly(
            "0000: warning: the register has the name \"ElU+001Bm\" (holds copy 7 of 0000/2); its"
                + " papers print: El U+001B m (cannot be printed as it is in the register)",
            "0000: warning: the register has the name \"日本\" (knew issue 2); its papers print:"
                + " U+65E5 U+672C (cannot be printed as it is in the register)");
    assertThat(answer.said()).anyMatch(s -> s.startsWith("0000: issue 3 takes the place of 2"));
    Path slips =
        answer.written().stream()
            .filter(p -> p.toString().endsWith("-slips.pdf"))
            .findFirst()
            .orElseThrow();
    try (PDDocument pdf = Loader.loadPDF(slips.toFile())) {
      assertThat(new PDFTextStripper().getText(pdf)).contains("U+65E5 U+672C");
    }
  }

  /** Where the papers should go there is a file: everything is registered, nothing placed. */
  private Answer interrupted(Path notice, Path... of) throws IOException {
    Files.writeString(folder.resolve("out"), "in the way");
    Answer answer = reissue(notice, of);
    Files.delete(folder.resolve("out"));
    assertThat(answer.good()).isFalse();
    return answer;
  }

  @Test
  void whatWasRegisteredIsKeptAndTheRestIsWorkedOut() throws Exception {
    Path first = notice("T 1", 20);
    Answer cut = interrupted(first, packs.get(0));
    assertThat(cut.problems().get(0))
        .contains("0000/2 is registered, and its files will be written then");
    assertThat(Files.readString(packs.get(0))).contains("number: 1");
    Entry made = latest("0000");

    Answer again = reissue(first);
    assertThat(again.problems()).isEmpty();
    assertThat(again.said())
        .contains("0000: issue 2 has this notice")
        .anyMatch(s -> s.startsWith("0001: issue 2 takes the place of 1: "))
        .endsWith("2 packs: 1 had the notice already, 1 issued");
    assertThat(latest("0000")).isEqualTo(made);
    assertThat(Files.readString(packs.get(0))).contains("number: 2");
    assertThat(Files.readString(packs.get(1))).contains("number: 2");
    assertThat(folder.resolve("out/0000-issue-2")).isDirectory();
    assertThat(folder.resolve("out/0001-issue-2")).isDirectory();

    List<List<String>> before = acts();
    Answer third = reissue(first);
    assertThat(third.said()).endsWith("2 packs: 2 had the notice already");
    assertThat(acts()).isEqualTo(before);
  }

  /** Else the next notice would print the restriction of the first one as withdrawn. */
  @Test
  void anotherNoticeFindsTheFilesOfTheOneThatWasCutShort() throws Exception {
    interrupted(notice("T 1", 20));
    Answer dry = reissue(notice("T 2", 40), true);
    assertThat(dry.said())
        .contains(
            "0000: 0000/2 is registered, but its files are not written yet: the next run begins with that");
    Answer other = reissue(notice("T 2", 40));
    assertThat(other.problems()).isEmpty();
    assertThat(other.said())
        .contains("0000/2 papers and files written: an earlier run had not finished")
        .anyMatch(s -> s.startsWith("0000: issue 3 takes the place of 2: "))
        .noneMatch(s -> s.contains("withdrawn"));
    assertThat(folder.resolve("out/0000-issue-2")).isDirectory();
    assertThat(folder.resolve("out/0000-issue-3")).isDirectory();
    assertThat(Files.readString(packs.get(1).resolveSibling("restrictions.yaml")))
        .contains("T 1", "T 2");
  }

  /** Both packs name one file of restrictions: the first one's run must not hide the change. */
  @Test
  void aNeighbourThatWasNotAskedForStillGetsTheChange() throws Exception {
    Path first = notice("T 1", 20);
    assertThat(reissue(first, packs.get(0)).good()).isTrue();
    assertThat(reissue(first, packs.get(1)).said())
        .anyMatch(s -> s.startsWith("0001: issue 2 takes the place of 1: "))
        .anyMatch(s -> s.contains("added, 1.10 km to 0.90 km: T 1"));
  }

  @Test
  void whereFilesHaveTheNoticeAndNoIssueIsKnownAPersonDecides() throws Exception {
    Path first = notice("T 1", 20);
    String entry = Files.readString(first);
    Files.writeString(packs.get(0).resolveSibling("restrictions.yaml"), entry);
    Answer answer = reissue(first, packs.get(1));
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems().get(0))
        .contains(
            "pack-0001.yaml: error: no issue of this pack is registered, but its files already");
    try (Register register = store.open()) {
      assertThat(register.latest("0001")).isEmpty();
    }
  }

  @Test
  void anOldNoticeIsNotTakenInTwice() throws Exception {
    reissue(notice("T 1", 20));
    reissue(notice("T 1", 50));
    Answer old = reissue(notice("T 1", 20));
    assertThat(old.good()).isFalse();
    assertThat(old.problems().get(0))
        .contains("error: issue 2 took this notice in, and issue 3 later changed");
    assertThat(Files.readString(packs.get(0))).contains("number: 3");
  }

  @Test
  void anEditInTheWayIsToldUntilItIsSettled() throws Exception {
    interrupted(notice("T 1", 20), packs.get(0));
    Path restrictions = packs.get(0).resolveSibling("restrictions.yaml");
    Files.writeString(restrictions, Files.readString(restrictions) + "# mine\n");
    Answer stuck = reissue(notice("T 2", 40));
    assertThat(stuck.problems())
        .anyMatch(p -> p.contains("edited since it was read for 0000/2; it was not overwritten"))
        .contains(
            "error: nothing else was done: first the files that an earlier run left unwritten");
    assertThat(latest("0000").number()).isEqualTo(2);
    assertThat(Files.readString(restrictions)).endsWith("# mine\n");

    Desk desk = new Desk(store, NOON, "a clerk");
    assertThat(desk.act("0000/2", "put in place", (r, by, e) -> r.delivered(by, e)).good())
        .isTrue();
    // Said and not done: T 1 is not in the files, and would be printed as withdrawn.
    assertThat(reissue(notice("T 2", 40)).problems().get(0))
        .contains(
            "error: the files differ from those of the last issue, 0000/2", "\n  T 1: 20 km/h");
    String first = Files.readString(notice("T 1", 20));
    Files.writeString(restrictions, first + "# mine\n");
    assertThat(reissue(notice("T 2", 40)).good()).isTrue();
  }
}
