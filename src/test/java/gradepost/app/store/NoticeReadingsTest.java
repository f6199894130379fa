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
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: on the way of a notice each state of a pack is read once. */
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
    Path notice = folder.resolve(reference.replace(' ', '-') + ".yaml");
    Files.writeString(notice, SyntheticNetwork.notice(reference, 0, way, 900, 20));
    return readings(Optional.of(notice), dry);
  }

  private Map<String, Integer> readings(Optional<Path> notice, boolean dry) {
    Map<String, Integer> read = new TreeMap<>();
    Sources counted =
        new Sources(
            new DiskFiles(Path.of("")),
            name -> {
              synchronized (read) {
                read.merge(PackFiles.stem(Path.of(name)), 1, Integer::sum);
              }
            });
    Depot depot = new Depot(folder);
    Answer answer =
        new Reissue(NOON, "a clerk", Progress.SILENT, counted)
            .of(
                new Order(
                    new Order.Read(List.of(routes), notice, Order.Edits.NONE),
                    new Order.Tell(Optional.empty(), Optional.empty(), false, Optional.empty()),
                    new Order.Put(depot.out(), depot.store(), dry),
                    new Order.Pace(2, Duration.ofMillis(200))));
    assertThat(answer.problems()).allMatch(p -> p.contains(": note: "));
    assertThat(answer.said()).anyMatch(s -> s.contains(" the place of "));
    return read;
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
}
