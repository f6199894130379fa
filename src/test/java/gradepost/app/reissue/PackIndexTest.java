package gradepost.app.reissue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.issue.ArchivedInputs;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.reissue.register.Register;
import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a pack that a run cannot touch is read once, until one of its files is another. */
class PackIndexTest {
  @TempDir Path folder;
  private List<Path> packs = List.of();

  @BeforeEach
  void network() throws Exception {
    packs = new SyntheticNetwork(folder.resolve("routes"), 2).packs(4, 1);
    Store store = new Depot(folder).store();
    Depot.begun(store);
    try (Register register = store.open()) {
      for (Path pack : packs) {
        var found = Disk.sources().pack(Disk.name(pack)).found().orElseThrow();
        register.takeIn(
            store.by("a clerk", Depot.NOON), ArchivedInputs.takenIn(store.kept(), found));
      }
    }
  }

  /** What is said, behind the packs that were read for it. */
  private record Run(Set<String> read, Answer answer) {}

  private Run run(Optional<Path> notice) {
    Set<String> read = new TreeSet<>();
    Sources sources =
        new Sources(
            new DiskFiles(Path.of("")),
            name -> read.add(name.replaceFirst(".*pack-(\\d+)\\.yaml", "$1")));
    Order order =
        new Order(
            new Order.Read(List.of(folder.resolve("routes")), notice, Order.Edits.NONE),
            new Order.Tell(Optional.empty(), Optional.empty(), false, Optional.empty()),
            new Order.Put(folder.resolve("out"), new Depot(folder).store(), false),
            new Order.Pace(1, Duration.ZERO));
    Answer answer =
        new Reissue(Depot.NOON, "a clerk", Progress.SILENT, sources, Optional.empty()).of(order);
    return new Run(read, answer);
  }

  /** It ended before the packs are valid, so it touches none. */
  private Optional<Path> notice(String reference) throws Exception {
    String text =
        SyntheticNetwork.notice(reference, 0, "Out", 900, 20)
            .replace("until: further notice", "until: 2026-11-22 04:00")
            .replace("imposed: 2026-11-26 04:00", "imposed: 2026-11-21 04:00");
    return Optional.of(Files.writeString(folder.resolve("notice.yaml"), text));
  }

  private static void add(Path file, String text) throws Exception {
    Files.writeString(file, Files.readString(file) + text);
  }

  @Test
  void aNoticeReadsThePacksOfItsRouteOnly() throws Exception {
    Run first = run(notice("T 1"));
    assertThat(first.read()).containsExactly("0000", "0001", "0002", "0003");
    Run second = run(notice("T 2"));
    assertThat(second.read()).containsExactly("0000", "0001");
    assertThat(second.answer()).isEqualTo(first.answer());
    assertThat(second.answer().said())
        .contains("0002: not touched, the notice is for another route");

    add(packs.get(3), "# a remark\n");
    assertThat(run(notice("T 2")).read()).containsExactly("0000", "0001", "0003");
    add(folder.resolve("routes/stock/coast-unit.yaml"), "# a remark\n");
    assertThat(run(notice("T 2")).read()).hasSize(4);
  }

  @Test
  void aRunWithoutANoticeReadsWhatWasEditedOnly() throws Exception {
    Run first = run(Optional.empty());
    assertThat(first.read()).hasSize(4);
    Run second = run(Optional.empty());
    assertThat(second.read()).isEmpty();
    assertThat(second.answer()).isEqualTo(first.answer());
    assertThat(second.answer().said()).contains("0000: not touched", "4 packs: 4 not touched");

    add(folder.resolve("routes/line-001/route.yaml"), "# a remark\n");
    Run edited = run(Optional.empty());
    assertThat(edited.read()).containsExactly("0002", "0003");
    assertThat(edited.answer().said())
        .contains(
            "0002: the files are not those of 0002/1: route.yaml was edited (comments or spaces only)");
  }

  /** What has ended is told each time, and that takes a reading. */
  @Test
  void aPackWithAnEndedRestrictionIsRead() throws Exception {
    String ended =
        "gradepost: restrictions\nnotices:\n"
            + SyntheticNetwork.notice("T 9", 1, "In", 900, 40)
                .replaceFirst("(?s).*  - ", "  - ")
                .replace("imposed: 2026-11-26 04:00", "imposed: 2026-11-19 04:00")
                .replace("until: further notice", "until: 2026-11-25 04:00");
    Path file = folder.resolve("routes/line-001/restrictions.yaml");
    Files.writeString(file, ended);
    Store other = Store.of(folder.resolve("other.db").toString(), Optional.empty());
    assertThat(other.exists()).isFalse();
    try (Register register = other.begin()) {
      PackIndex index = PackIndex.of(Optional.of(register));
      index.note(Disk.sources().pack(Disk.name(packs.get(3))).found().orElseThrow());
      index.note(Disk.sources().pack(Disk.name(packs.get(0))).found().orElseThrow());
      index.keep(register);
      PackIndex kept = PackIndex.of(Optional.of(register));
      var noon = other.by("a clerk", Depot.NOON).when();
      assertThat(kept.facts(packs.get(3)).orElseThrow().standAllAt(noon)).isFalse();
      assertThat(kept.facts(packs.get(0)).orElseThrow().standAllAt(noon)).isTrue();
      assertThat(kept.facts(packs.get(1))).isEmpty();
    }
  }
}
