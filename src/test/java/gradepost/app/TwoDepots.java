package gradepost.app;

import static gradepost.app.Depot.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.reissue.Order;
import gradepost.app.store.Answer;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: two depots with files of their own and one register withdraw nothing by it. */
abstract class TwoDepots {
  @TempDir Path folder;
  private String register = "";

  /** Where a register can be made. */
  abstract String fresh(Path folder) throws Exception;

  @BeforeEach
  void network() throws Exception {
    register = fresh(folder);
    for (String depot : List.of("north", "south")) {
      new SyntheticNetwork(folder.resolve(depot).resolve("routes"), 2).packs(1, 7);
    }
  }

  private Path restrictions(String depot) {
    return folder.resolve(depot).resolve("routes/line-000/restrictions.yaml");
  }

  private Answer reissue(String depot, String archive, String reference, boolean fromArchive)
      throws IOException {
    Path notice = folder.resolve(reference + ".yaml");
    int kmh = 20 + 5 * Integer.parseInt(reference.substring(2));
    Files.writeString(notice, SyntheticNetwork.notice(reference, 0, "Out", 900, kmh));
    return new Depot(folder.resolve(depot))
        .reissue(
            NOON,
            Store.of(register, Optional.of(folder.resolve(archive))),
            List.of(folder.resolve(depot).resolve("routes/line-000/pack-0000.yaml")),
            Optional.of(notice),
            false,
            false,
            new Order.Edits(fromArchive, Set.of()));
  }

  private static void refused(Answer answer, String why) {
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems().get(0)).contains(why);
    assertThat(answer.written()).isEmpty();
  }

  private static void issued(Answer answer, int number) {
    assertThat(answer.problems()).isEmpty();
    assertThat(answer.said())
        .anyMatch(s -> s.startsWith("0000: issue " + number + " takes the place of "))
        .noneMatch(s -> s.contains("withdrawn") || s.contains("eased"));
  }

  @Test
  void threeNoticesByTurnsWithdrawNothing() throws Exception {
    issued(reissue("north", "archive", "T 1", false), 2);
    String older = "these are the files of 0000/%d, but the last issue is 0000/%d";
    refused(reissue("south", "archive", "T 2", false), older.formatted(1, 2));
    issued(reissue("south", "archive", "T 2", true), 3);
    refused(reissue("north", "archive", "T 3", false), older.formatted(2, 3));
    issued(reissue("north", "archive", "T 3", true), 4);
    assertThat(Files.readString(restrictions("north"))).contains("T 1", "T 2", "T 3");
  }

  @Test
  void anArchiveThatIsElsewhereIsNamed() throws Exception {
    issued(reissue("north", "north-archive", "T 1", false), 2);
    for (boolean fromArchive : new boolean[] {false, true}) {
      refused(
          reissue("south", "south-archive", "T 2", fromArchive),
          "pack-0000.yaml: error: the archive %s does not hold pack-0000.yaml of 0000/2 whole\n  Maybe it was issued with another archive: name that one with --archive"
              .formatted(folder.resolve("south-archive")));
    }
    issued(reissue("south", "north-archive", "T 2", true), 3);
  }

  /** What one depot issued is not taken for lost by the other, and nothing is entered beside it. */
  @Test
  void aRegisterWithAnotherArchiveIsNotEnteredInOrReproducedFrom() throws Exception {
    issued(reissue("north", "north-archive", "T 1", false), 2);
    Store south = Store.of(register, Optional.of(folder.resolve("south-archive")));
    String elsewhere =
        "error: the archive %s has nothing of the issues in the register, such as 0000/1 by "
            .formatted(folder.resolve("south-archive"));
    Path papers = folder.resolve("papers");
    refused(
        new Reproduce(south, Optional.empty(), Progress.SILENT).of("0000/2", Optional.of(papers)),
        elsewhere);
    refused(
        new Enter(south, papers, Optional.empty(), NOON, "Birch", false)
            .of(List.of(folder.resolve("south/routes")), Duration.ofSeconds(1), Progress.SILENT),
        elsewhere);
    assertThat(papers).doesNotExist();
    Store north = Store.of(register, Optional.of(folder.resolve("north-archive")));
    Answer again =
        new Reproduce(north, Optional.empty(), Progress.SILENT).of("0000/2", Optional.empty());
    assertThat(again.problems()).isEmpty();
    assertThat(again.said())
        .singleElement()
        .asString()
        .startsWith("0000/2 reproduced byte for byte");
  }

  /** Both have looked before either has registered: the second is told, in words. */
  @Test
  void whoComesSecondToTheRegisterIsToldSo() throws Exception {
    issued(reissue("north", "archive", "T 1", false), 2);
    Store store = Store.of(register, Optional.of(folder.resolve("archive")));
    try (Register open = store.open()) {
      var entry = open.latest("0000").orElseThrow();
      Register.By by = new Register.By("a clerk", entry.issued());
      org.assertj.core.api.Assertions.assertThatThrownBy(() -> open.issue(by, entry))
          .hasMessage(
              "0000/2 was registered meanwhile by a clerk: this run's issue of the pack is"
                  + " dropped");
    }
  }
}
