package gradepost.app.store;

import static gradepost.app.Depot.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.reissue.Order;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: files that are not those of the last issue withdraw nothing that is in force, unless
 * somebody has named it. One line, one pack for each direction, one file of restrictions.
 */
@Tag("slow")
class OlderFilesTest {
  private static final Clock LATER = Clock.offset(NOON, Duration.ofDays(30));

  @TempDir Path folder;
  private Path routes = Path.of("");
  private List<Path> all = List.of();
  private List<Path> packs = List.of();
  private Path restrictions = Path.of("");

  @BeforeEach
  void network() throws IOException {
    routes = folder.resolve("routes");
    all = new SyntheticNetwork(routes, 3).packs(2, 7);
    packs = all.subList(0, 1);
    restrictions = packs.get(0).resolveSibling("restrictions.yaml");
  }

  private Path notice(String reference, int kmh) throws IOException {
    String text = SyntheticNetwork.notice(reference, 0, "both", 900, kmh);
    return Files.writeString(folder.resolve(reference.replace(' ', '-') + kmh + ".yaml"), text);
  }

  private Answer reissue(Optional<Path> notice, boolean fromArchive, String... confirmed) {
    return run(NOON, packs, notice, false, fromArchive, confirmed);
  }

  private Answer run(
      Clock clock,
      List<Path> of,
      Optional<Path> notice,
      boolean dry,
      boolean fromArchive,
      String... confirmed) {
    Depot depot = new Depot(folder);
    Order.Edits edits = new Order.Edits(fromArchive, Set.of(confirmed));
    return depot.reissue(clock, depot.store(), of, notice, false, dry, edits);
  }

  private void issued(String reference, int kmh) throws IOException {
    Answer answer = reissue(Optional.of(notice(reference, kmh)), false);
    assertThat(answer.good()).as(answer.toString()).isTrue();
  }

  private Entry latest(String pack) throws Exception {
    try (Register register = new Depot(folder).store().open()) {
      return register.latest(pack).orElseThrow();
    }
  }

  private Map<Path, byte[]> copy() throws IOException {
    Map<Path, byte[]> out = new HashMap<>();
    try (Stream<Path> files = Files.walk(routes)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        out.put(file, Files.readAllBytes(file));
      }
    }
    return out;
  }

  private static void restore(Map<Path, byte[]> copy) throws IOException {
    for (Map.Entry<Path, byte[]> file : copy.entrySet()) {
      Files.write(file.getKey(), file.getValue());
    }
  }

  private void typed(Path file, String from, String to) throws IOException {
    String text = Files.readString(file);
    assertThat(text).contains(from);
    Files.writeString(file, text.replace(from, to));
  }

  @Test
  void aRestoredCopyIsKnownAndIssuesNothing() throws Exception {
    issued("T 1", 20);
    Map<Path, byte[]> copy = copy();
    issued("T 2", 30);
    restore(copy);
    for (Optional<Path> by : List.of(Optional.of(notice("T 3", 40)), Optional.<Path>empty())) {
      for (boolean dry : new boolean[] {true, false}) {
        Answer refused = run(NOON, packs, by, dry, false);
        assertThat(refused.good()).isFalse();
        assertThat(refused.problems().get(0))
            .startsWith(
                packs.get(0)
                    + ": error: these are the files of 0000/2, but the last issue is 0000/3:"
                    + " nothing is issued from older files\n"
                    + "  T 2: 30 km/h from 0.90 km to 1.10 km, until further notice: not in"
                    + " the files\n"
                    + "  pack-0000.yaml is from 0000/2 (issue: ")
            .contains("restrictions.yaml is from 0000/2 (notices)")
            .endsWith("Maybe restore the files of 0000/3 with --from-archive");
        assertThat(latest("0000").number()).isEqualTo(3);
        assertThat(copy()).usingRecursiveComparison().isEqualTo(copy);
      }
    }
    // A word for each restriction does not make older files the last ones.
    assertThat(reissue(Optional.of(notice("T 3", 40)), false, "T 2").good()).isFalse();

    Answer answer = reissue(Optional.of(notice("T 3", 40)), true);
    assertThat(answer.problems()).isEmpty();
    assertThat(answer.said())
        .anyMatch(s -> s.startsWith("0000: issue 4 takes the place of 3: "))
        .noneMatch(s -> s.contains("withdrawn"));
    assertThat(Files.readString(restrictions)).contains("T 1", "T 2", "T 3");
  }

  @Test
  @Tag("long")
  void whatADryRunWouldLayInPlaceIsReadAndNotWritten() throws Exception {
    issued("T 1", 20);
    Map<Path, byte[]> copy = copy();
    issued("T 2", 30);
    restore(copy);
    Answer answer = run(NOON, packs, Optional.of(notice("T 3", 40)), true, true);
    assertThat(answer.problems()).isEmpty();
    assertThat(answer.said())
        .contains(restrictions.normalize() + " would be restored from the archive")
        .anyMatch(s -> s.startsWith("0000: issue 4 would take the place of 3: "))
        .noneMatch(s -> s.contains("withdrawn"));
    assertThat(copy()).usingRecursiveComparison().isEqualTo(copy);
  }

  /** A checkout in which somebody has worked since is no issue's, and its number tells. */
  @Test
  @Tag("long")
  void anOlderCopyThatWasEditedIsToldByItsNumber() throws Exception {
    Map<Path, byte[]> copy = copy();
    issued("T 1", 20);
    restore(copy);
    Files.writeString(packs.get(0), Files.readString(packs.get(0)) + "# mine\n");
    Files.writeString(restrictions, Files.readString(restrictions) + "# mine too\n");
    Answer refused = reissue(Optional.of(notice("T 2", 40)), false, "T 1");
    assertThat(refused.problems().get(0))
        .startsWith(
            packs.get(0)
                + ": error: the pack has issue number 1, but the last issue is 0000/2; allowed: 2, with"
                + " the files of that issue\n");
    Answer answer = reissue(Optional.of(notice("T 2", 40)), true);
    assertThat(answer.problems()).isEmpty();
    assertThat(Files.readString(restrictions)).contains("T 1", "T 2");
    // What was typed is not lost.
    String kept =
        answer.said().stream()
            .filter(s -> s.contains("; the replaced file is kept as "))
            .toList()
            .get(0);
    Path there = Path.of(kept.substring(kept.lastIndexOf(' ') + 1));
    assertThat(Files.readString(there)).endsWith("# mine\n");
  }

  @Test
  void aNumberThatTheRegisterDoesNotKnowNamesAnotherRegister() throws Exception {
    issued("T 1", 20);
    typed(packs.get(0), "number: 2", "number: 5");
    assertThat(reissue(Optional.of(notice("T 2", 40)), false).problems().get(0))
        .contains("error: the pack has issue number 5, but the last issue is 0000/2; allowed: 2")
        .endsWith("; or name the register that has issue 5, with --register");
  }

  @Test
  void everyRestrictionThatAnEditLosesIsConfirmedByItsReference() throws Exception {
    byte[] none = Files.readAllBytes(restrictions);
    issued("T 1", 20);
    issued("T 2", 30);
    Files.write(restrictions, none);
    Answer refused = reissue(Optional.empty(), false);
    assertThat(refused.problems().get(0))
        .startsWith(
            packs.get(0)
                + ": error: the files differ from those of the last issue, 0000/3, and no notice says so\n"
                + "  T 1: 20 km/h from 0.90 km to 1.10 km, until further notice: not in the"
                + " files\n"
                + "  T 2: 30 km/h ")
        .contains("\n  restrictions.yaml is from 0000/1 (notices, none)")
        .endsWith(
            "; or, if the edit is right, confirm each by name: --confirm \"T 1\" --confirm"
                + " \"T 2\"");
    assertThat(reissue(Optional.empty(), false, "T 2").problems().get(0))
        .contains("\n  T 1: ")
        .doesNotContain("\n  T 2: ");
    assertThat(reissue(Optional.of(notice("T 3", 40)), false, "T 2").good()).isFalse();
    assertThat(latest("0000").number()).isEqualTo(3);

    Answer answer = reissue(Optional.empty(), false, "T 1", "T 2");
    assertThat(answer.problems()).isEmpty();
    assertThat(answer.said())
        .contains("0000: confirmed: T 1, T 2")
        .anyMatch(s -> s.contains("withdrawn, 0.90 km to 1.10 km: T 1"));
  }

  @Test
  void anEditBesideANoticeIsShownAndWhatItEasesIsConfirmed() throws Exception {
    issued("T 1", 20);
    String added = Files.readString(notice("T 9", 30)).lines().skip(2).findFirst().orElseThrow();
    Files.writeString(restrictions, Files.readString(restrictions) + added + "\n");
    Answer answer = reissue(Optional.of(notice("T 2", 40)), false);
    assertThat(answer.problems()).isEmpty();
    assertThat(answer.said())
        .contains("0000: the files are not those of 0000/2: restrictions.yaml was edited (notices)")
        .anyMatch(s -> s.contains("added, 0.90 km to 1.10 km: T 9"));

    typed(restrictions, "20 km/h", "50 km/h");
    assertThat(reissue(Optional.of(notice("T 3", 45)), false).problems().get(0))
        .contains(
            "\n  T 1: 20 km/h from 0.90 km to 1.10 km, until further notice: in the files 50 km/h"
                + " from 0.90 km to 1.10 km, until further notice\n")
        .endsWith("--confirm \"T 1\"");
    assertThat(reissue(Optional.of(notice("T 3", 45)), false, "T 1").problems()).isEmpty();
  }

  @Test
  @Tag("long")
  void anEndThatHasComeCountsAsNamed() throws Exception {
    Path notice = notice("T 1", 20);
    typed(notice, "until: further notice", "until: 2026-12-20 04:00");
    assertThat(reissue(Optional.of(notice), false).good()).isTrue();
    issued("T 2", 30);
    String text = Files.readString(restrictions);
    Files.writeString(
        restrictions,
        text.substring(0, text.indexOf("  - reference: \"T 1\""))
            + text.substring(text.indexOf("  - reference: \"T 2\"")));
    assertThat(run(NOON, packs, Optional.of(notice("T 3", 40)), false, false).problems().get(0))
        .contains("\n  T 1: 20 km/h from 0.90 km to 1.10 km, until 2026-12-20 04:00: not in the");
    assertThat(run(LATER, packs, Optional.of(notice("T 3", 40)), false, false).problems())
        .isEmpty();
  }

  @Test
  @Tag("long")
  void aCommentIsNoDifferenceThatMatters() throws Exception {
    issued("T 1", 20);
    Files.writeString(restrictions, "# looked through\n" + Files.readString(restrictions));
    Answer none = reissue(Optional.empty(), false);
    assertThat(none.problems()).isEmpty();
    assertThat(none.said())
        .contains(
            "0000: the files are not those of 0000/2: restrictions.yaml was edited (comments or"
                + " spaces only)",
            "0000: not touched");
    assertThat(reissue(Optional.of(notice("T 2", 40)), false).problems()).isEmpty();
    assertThat(Files.readString(restrictions)).startsWith("# looked through\n");
  }

  /** A permissible speed that was lowered since would rise again in silence. */
  @Test
  void anOlderRouteIsConfirmedByTheNameOfItsFile() throws Exception {
    issued("T 1", 20);
    Path route = packs.get(0).resolveSibling("route.yaml");
    byte[] older = Files.readAllBytes(route);
    String speed =
        Files.readString(route)
            .lines()
            .filter(l -> l.contains("the line"))
            .findFirst()
            .orElseThrow();
    typed(route, speed, speed.replaceFirst("speed: \\d+", "speed: 40"));
    assertThat(reissue(Optional.empty(), false).good()).isTrue();
    Files.write(route, older);
    assertThat(reissue(Optional.of(notice("T 2", 25)), false).problems().get(0))
        .contains(
            "\n  route.yaml: older than the one in 0000/3\n",
            "\n  route.yaml is from 0000/2 (restrictions)\n")
        .endsWith("--confirm \"route.yaml\"");
    assertThat(reissue(Optional.of(notice("T 2", 25)), false, "route.yaml").problems()).isEmpty();
  }

  /** The other pack's drivers know it only from the file that both name. */
  @Test
  @Tag("long")
  void aFileThatANeighbourWasReissuedWithBelongsToBoth() throws Exception {
    byte[] none = Files.readAllBytes(restrictions);
    List<Path> second = all.subList(1, 2);
    assertThat(run(NOON, packs, Optional.of(notice("T 1", 20)), false, false).good()).isTrue();
    byte[] one = Files.readAllBytes(restrictions);
    Files.write(restrictions, none);
    assertThat(run(NOON, second, Optional.of(notice("T 2", 30)), false, false).problems().get(0))
        .contains("\n  T 1: 20 km/h ", "restrictions.yaml is from 0001/1 (notices, none)");
    Answer laid = run(NOON, second, Optional.empty(), false, true);
    assertThat(restrictions).hasBinaryContent(one);
    assertThat(laid.said()).anyMatch(s -> s.contains("added, 1.10 km to 0.90 km: T 1"));
  }

  @Test
  void aPackThatIsNotRegisteredIsNotBegunFromAnOlderFile() throws Exception {
    byte[] none = Files.readAllBytes(restrictions);
    Path third = all.get(1);
    byte[] pack = Files.readAllBytes(third);
    Files.delete(third);
    issued("T 1", 20);
    Files.write(third, pack);
    Files.write(restrictions, none);
    Answer refused = run(NOON, List.of(third), Optional.of(notice("T 2", 30)), false, false);
    assertThat(refused.problems().get(0))
        .contains(
            "pack-0001.yaml: error: restrictions.yaml is from 0000/1, but the last issue with"
                + " this file is 0000/2: nothing is issued from older files\n");
  }

  /** A run was killed before it had put anything in place, and then a copy was restored. */
  @Test
  void theFilesOfAnIssueThatWasNotPutInPlaceAreLaidThereFirst() throws Exception {
    issued("T 1", 20);
    Map<Path, byte[]> copy = copy();
    Path out = folder.resolve("out");
    Files.move(out, folder.resolve("aside"));
    Files.writeString(out, "in the way");
    assertThat(reissue(Optional.of(notice("T 2", 30)), false).good()).isFalse();
    assertThat(latest("0000").number()).isEqualTo(3);
    Files.delete(out);
    restore(copy);
    typed(restrictions, "20 km/h", "50 km/h");
    assertThat(reissue(Optional.of(notice("T 3", 40)), false).problems())
        .anyMatch(p -> p.contains("edited since it was read for 0000/3"));
    Answer answer = reissue(Optional.of(notice("T 3", 40)), true);
    assertThat(answer.problems()).isEmpty();
    assertThat(answer.said())
        .contains("0000/3 papers and files written: an earlier run had not finished")
        .noneMatch(s -> s.contains("withdrawn") || s.contains("eased"));
    assertThat(out.resolve("0000-issue-3")).isDirectory();
    assertThat(Files.readString(restrictions)).contains("T 1", "T 2", "T 3");
  }

  @Test
  void whatTheArchiveLostIsTakenFromTheFilesOrMissedByName() throws Exception {
    issued("T 1", 20);
    Entry last = latest("0000");
    String digest = last.inputs().get(last.inputs().size() - 1).digest();
    Path kept = Path.of(new Depot(folder).store().kept().place(digest));
    Files.delete(kept);
    issued("T 2", 30);
    assertThat(kept).exists();

    Files.delete(
        Path.of(new Depot(folder).store().kept().place(latest("0000").inputs().get(0).digest())));
    typed(packs.get(0), "title: Pack 0000", "title: Pack 0000 again");
    assertThat(reissue(Optional.of(notice("T 3", 40)), false).problems().get(0))
        .startsWith(packs.get(0) + ": error: the archive ")
        .contains(
            " does not hold pack-0000.yaml of 0000/3 whole\n  Maybe it was issued with another");
  }
}
