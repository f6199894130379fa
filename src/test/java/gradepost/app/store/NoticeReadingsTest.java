package gradepost.app.store;

import static gradepost.app.Depot.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.reissue.Order;
import gradepost.app.reissue.Reissue;
import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: on the way of a notice a pack is read twice, as its files are and as it is to be
 * issued. Where its files are not those of its last issue, that is read from the archive beside
 * them: a third reading, of something else. Nothing is read a second time.
 */
@Tag("slow")
class NoticeReadingsTest {
  @TempDir Path folder;
  private Path routes;

  @BeforeEach
  void network() throws IOException {
    routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(4, 7);
  }

  /** A new run with a notice that is for one direction of the first route. */
  private Map<String, Integer> readings(String reference, String way, boolean dry)
      throws IOException {
    return readings(Optional.of(notice(reference, way)), dry);
  }

  private Map<String, Integer> readings(Optional<Path> notice, boolean dry) {
    return readings(notice, dry, Order.Edits.NONE);
  }

  private Map<String, Integer> readings(Optional<Path> notice, boolean dry, Order.Edits edits) {
    Map<String, Integer> read = new TreeMap<>();
    Answer answer = answer(notice, dry, edits, read);
    assertThat(answer.problems()).allMatch(p -> p.contains(": note: "));
    assertThat(answer.said()).anyMatch(s -> s.contains(" the place of "));
    return read;
  }

  private Answer answer(
      Optional<Path> notice, boolean dry, Order.Edits edits, Map<String, Integer> read) {
    return answer(notice, dry, edits, Optional.empty(), read);
  }

  private Answer answer(
      Optional<Path> notice,
      boolean dry,
      Order.Edits edits,
      Optional<String> checkedBy,
      Map<String, Integer> read) {
    Sources counted =
        new Sources(
            new DiskFiles(Path.of("")),
            name -> {
              synchronized (read) {
                read.merge(PackFiles.id(Path.of(name)), 1, Integer::sum);
              }
            });
    Depot depot = new Depot(folder);
    Depot.begun(depot.store());
    return new Reissue(NOON, "a clerk", Progress.SILENT, counted, Optional.empty())
        .of(
            new Order(
                new Order.Read(List.of(routes), notice, edits),
                new Order.Tell(Optional.empty(), checkedBy, false, Optional.empty()),
                new Order.Put(depot.out(), depot.store(), dry),
                new Order.Pace(2, Duration.ofMillis(200))));
  }

  private Path notice(String reference) throws IOException {
    return notice(reference, "Out");
  }

  private Path notice(String reference, String way) throws IOException {
    Path notice = folder.resolve(reference.replace(' ', '-') + ".yaml");
    return Files.writeString(notice, SyntheticNetwork.notice(reference, 0, way, 900, 20));
  }

  private Map<Path, byte[]> files() throws IOException {
    Map<Path, byte[]> out = new TreeMap<>();
    for (String name : List.of("line-000/restrictions.yaml", "line-000/pack-0000.yaml")) {
      out.put(routes.resolve(name), Files.readAllBytes(routes.resolve(name)));
    }
    return out;
  }

  private static void put(Map<Path, byte[]> files) throws IOException {
    for (Map.Entry<Path, byte[]> file : files.entrySet()) {
      Files.write(file.getKey(), file.getValue());
    }
  }

  @Test
  void aPackIsReadAsItIsAndAsItIsToBeIssued() throws IOException {
    assertThat(readings("T 1", "Out", true))
        .as("a dry run without a register")
        .isEqualTo(Map.of("0000", 2, "0001", 2, "0002", 1, "0003", 1));
    assertThat(readings("T 1", "Out", false))
        .as("the first issue of a pack")
        .isEqualTo(Map.of("0000", 2, "0001", 2, "0002", 1, "0003", 1));
    assertThat(readings("T 2", "Out", false).get("0000")).as("with an issue before").isEqualTo(2);
  }

  /** Another pack's issue has altered a file that both name: the last issue is in the archive. */
  @Test
  @Tag("long")
  void aLastIssueThatIsNoLongerInPlaceIsReadOnceToo() throws IOException {
    readings("T 1", "Out", false);
    assertThat(readings("T 2", "In", false)).containsEntry("0001", 3);
  }

  @Test
  void anEditByHandIsReadBesideTheLastIssue() throws IOException {
    readings("T 1", "Out", false);
    Path file = routes.resolve("line-000/restrictions.yaml");
    Files.writeString(file, Files.readString(file).replace("20 km/h", "50 km/h"));
    assertThat(readings(Optional.empty(), false)).containsEntry("0000", 3).containsEntry("0002", 2);
  }

  /** What belongs in place is then neither what lies there nor what the pack's last issue had. */
  @Test
  @Tag("long")
  void anEditOfAFileThatAnotherPackHasAlteredIsReadNoMore() throws IOException {
    readings("T 1", "Out", false);
    readings("T 2", "In", false);
    Path file = routes.resolve("line-000/restrictions.yaml");
    Files.writeString(file, Files.readString(file).replace("20 km/h", "10 km/h"));
    assertThat(readings(Optional.empty(), false)).containsEntry("0000", 3).containsEntry("0001", 3);
  }

  /** The files that are replaced are not read: the notice is held against their route alone. */
  @Test
  @Tag("long")
  void afterARestorationOnlyTheRestoredFilesAreRead() throws IOException {
    readings("T 1", "Out", false);
    Map<Path, byte[]> older = files();
    readings("T 2", "Out", false);
    put(older);
    Order.Edits restored = new Order.Edits(true, Set.of());
    assertThat(readings(Optional.of(notice("T 3")), true, restored)).containsEntry("0000", 2);
    assertThat(readings(Optional.of(notice("T 3")), false, restored)).containsEntry("0000", 2);
  }

  /** As after a run that was killed between the register and the files. */
  @Test
  void whatAnEarlierRunRegisteredIsPutInPlaceBeforeItIsRead() throws Exception {
    Map<Path, byte[]> before = files();
    readings("T 1", "Out", false);
    put(before);
    String url = "jdbc:sqlite:" + folder.resolve("reg/register.db");
    try (Connection register = DriverManager.getConnection(url);
        Statement lost = register.createStatement()) {
      assertThat(lost.executeUpdate("UPDATE issue SET delivered = 0 WHERE pack = '0000'"))
          .isPositive();
    }
    assertThat(readings("T 2", "Out", false)).containsEntry("0000", 2);
  }

  /** It is told of its own fault; that its route is known all the same spares a wrong reproach. */
  @Test
  void aPackThatCannotBeReadIsReadOnce() throws IOException {
    Path pack = routes.resolve("line-000/pack-0000.yaml");
    Files.writeString(pack, Files.readString(pack).replace("load: seated", "load: heaped"));
    Files.delete(routes.resolve("line-000/pack-0001.yaml"));
    Map<String, Integer> read = new TreeMap<>();
    Answer answer = answer(Optional.of(notice("T 1")), false, Order.Edits.NONE, read);
    assertThat(answer.good()).isFalse();
    assertThat(String.join("\n", answer.problems())).contains("heaped").doesNotContain("T-1.yaml");
    assertThat(read).containsEntry("0000", 1).containsEntry("0002", 1);
  }

  /** What cannot be issued is looked at all the same, as a value: the notice may not touch it. */
  @Test
  void filesThatCannotBeReadAsTheyWouldBeIssuedAreNotReadInAnotherForm() throws IOException {
    readings("T 1", "Out", false);
    Map<String, Integer> read = new TreeMap<>();
    Answer answer =
        answer(Optional.of(notice("T 2")), false, Order.Edits.NONE, Optional.of("\u9648"), read);
    assertThat(answer.good()).isFalse();
    assertThat(String.join("\n", answer.problems())).contains("pack-0000.yaml").contains("\u9648");
    assertThat(String.join("\n", answer.said())).contains("0001");
    assertThat(read)
        .as("and the last issue of 0001; the packs of the other route are known from before")
        .isEqualTo(Map.of("0000", 2, "0001", 3));
  }
}
