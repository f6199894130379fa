package gradepost.app.queue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.reissue.Order;
import gradepost.app.reissue.Reissue;
import gradepost.app.store.Answer;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.reissue.register.PostgresServer;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Property: what workers make through the register is what one machine makes by itself. */
@Tag("slow")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class QueueTest {
  @TempDir Path folder;
  private String url = "";

  @BeforeEach
  void fresh() throws Exception {
    url = PostgresServer.fresh();
    Depot.begun(Store.of(url, Optional.empty()));
  }

  private static Order.Tell tell(Optional<String> reason) {
    Optional<String> nobody = Optional.empty();
    return new Order.Tell(
        Optional.empty(), Optional.empty(), reason, nobody, false, Optional.empty());
  }

  private Answer reissue(Path work, Optional<Path> notice, Optional<Queue> queue, String reason) {
    Store store = queue.isPresent() ? Store.of(url, Optional.empty()) : new Depot(work).store();
    Depot.begun(store);
    Order order =
        new Order(
            new Order.Read(List.of(work.resolve("routes")), notice, Order.Edits.NONE),
            tell(Optional.of(reason).filter(text -> !text.isEmpty())),
            new Order.Put(work.resolve("out"), store, false),
            new Order.Pace(2, Duration.ZERO));
    return new Reissue(Depot.NOON, "a clerk", Progress.SILENT, Disk.sources(), queue.map(q -> q))
        .of(order);
  }

  private List<String> work() {
    ConcurrentLinkedQueue<Answer> told = new ConcurrentLinkedQueue<>();
    Worker.Pace pace = new Worker.Pace(2, Duration.ofSeconds(1), true);
    Answer answer = new Worker(Store.of(url, Optional.empty()), pace, told::add).run();
    assertThat(answer.problems()).isEmpty();
    return told.stream()
        .flatMap(a -> Stream.concat(a.said().stream(), a.problems().stream()))
        .toList();
  }

  /** Asked for by one thread, made by others. */
  private Answer queued(Path work, Optional<Path> notice, String reason) throws Exception {
    ExecutorService asker = Executors.newSingleThreadExecutor();
    try {
      Future<Answer> answer =
          asker.submit(() -> reissue(work, notice, Optional.of(Queue.awaited(left -> {})), reason));
      while (!answer.isDone()) {
        if (waiting() > 0) {
          work();
        }
        Thread.sleep(100);
      }
      return answer.get();
    } finally {
      asker.shutdown();
    }
  }

  private int waiting() throws Exception {
    try (Register register = Register.again(url)) {
      return register.jobs().waiting();
    }
  }

  private Path notice(boolean both) throws IOException {
    return Files.writeString(
        folder.resolve("notice.yaml"),
        SyntheticNetwork.notice("T 1", 0, both ? "both" : "Out", 900, 20));
  }

  private Path office(String name) throws IOException {
    new SyntheticNetwork(folder.resolve(name + "/routes"), 2).packs(2, 1);
    return folder.resolve(name);
  }

  private static Map<String, String> files(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(folder.relativize(file).toString(), Digest.of(Files.readAllBytes(file)));
      }
    }
    return files;
  }

  private void sql(String statement) throws Exception {
    try (Connection c = DriverManager.getConnection(url);
        Statement s = c.createStatement()) {
      s.execute(statement);
    }
  }

  @Test
  void aNoticeAndAnEditedPolicyMakeTheSameBytesAsWithoutAQueue() throws Exception {
    Path plain = office("plain");
    Path nation = office("nation");
    Optional<Path> notice = Optional.of(notice(false));
    Answer expected = reissue(plain, notice, Optional.empty(), "");
    Answer answer = queued(nation, notice, "");
    assertThat(answer.problems()).isEqualTo(expected.problems());
    assertThat(answer.said())
        .isEqualTo(expected.said())
        .contains("2 packs: 1 not touched, 1 issued");
    assertThat(files(nation.resolve("out")))
        .hasSizeGreaterThan(8)
        .isEqualTo(files(plain.resolve("out")));
    assertThat(files(nation.resolve("routes"))).isEqualTo(files(plain.resolve("routes")));

    for (Path office : List.of(plain, nation)) {
      Path policy = office.resolve("routes/policy/km-bar.yaml");
      String text = Files.readString(policy);
      String edited = text.replace("reaction: {value: 500 ms", "reaction: {value: 600 ms");
      assertThat(edited).isNotEqualTo(text);
      Files.writeString(policy, edited);
    }
    String reason = "reaction time of December";
    reissue(plain, Optional.empty(), Optional.empty(), reason);
    assertThat(queued(nation, Optional.empty(), reason).said()).contains("2 packs: 2 issued");
    assertThat(files(nation.resolve("out"))).isEqualTo(files(plain.resolve("out")));
    try (Register register = Register.again(url)) {
      assertThat(register.list(Question.acts()).rows())
          .filteredOn(row -> row.get(2).endsWith(reason))
          .extracting(row -> row.get(2) + " " + row.get(3))
          .containsExactlyInAnyOrder(
              "issued: " + reason + " 0000/3", "issued: " + reason + " 0001/2");
      assertThat(register.jobs().open()).isEmpty();
    }
  }

  @Test
  void whoeverDoesNotWaitComesBackAndBadDataFailByThemselves() throws Exception {
    Path nation = office("nation");
    Optional<Path> notice = Optional.of(notice(true));
    Answer asked = reissue(nation, notice, Optional.of(Queue.detached()), "");
    assertThat(asked.said()).contains("2 packs: 2 asked of the workers");
    assertThat(nation.resolve("out")).doesNotExist();
    assertThat(reissue(nation, notice, Optional.of(Queue.detached()), "").problems().get(0))
        .startsWith("error: the workers have not yet made all of an earlier run; left to make: 2");
    Path other =
        Files.writeString(
            folder.resolve("b.yaml"), SyntheticNetwork.notice("T 2", 0, "Out", 900, 30));
    assertThat(
            reissue(nation, Optional.of(other), Optional.of(Queue.awaited(left -> {})), "")
                .problems()
                .get(0))
        .startsWith(
            "error: workers have not yet made what a clerk asked for: 2 in all, such as 0000/2");

    try (Register register = Register.again(url)) {
      assertThat(register.list(Question.toMake()).rows())
          .containsExactly(
              List.of("0000/2", "a clerk", "0", "0"), List.of("0001/2", "a clerk", "0", "0"));
    }

    // What the archive lost cannot be made; nobody tries it again.
    String pack = Files.readString(nation.resolve("routes/line-000/pack-0001.yaml"));
    sql("DELETE FROM content WHERE convert_from(bytes, 'UTF8') LIKE '%Pack 0001%number: 2%'");
    assertThat(work())
        .anyMatch(line -> line.startsWith("0000: issue 2 takes the place of 1"))
        .contains("error: 0001/2: the archive in the register does not hold its files whole");
    assertThat(work()).isEmpty();
    assertThat(Files.readString(nation.resolve("routes/line-000/pack-0001.yaml"))).isEqualTo(pack);

    // It is told, and then made again from the files.
    Answer back = queued(nation, notice, "");
    assertThat(back.said())
        .contains("0000/2 papers and files written: an earlier run had not finished");
    assertThat(nation.resolve("out/0000-issue-2/0000-out-3-car.pdf")).exists();
    assertThat(nation.resolve("out/0001-issue-2")).exists();
    assertThat(
            new String(
                Files.readAllBytes(nation.resolve("routes/line-000/restrictions.yaml")),
                StandardCharsets.UTF_8))
        .contains("T 1");
  }
}
