package gradepost.app.queue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Digest;
import gradepost.app.store.Store;
import gradepost.reissue.register.PostgresServer;
import gradepost.reissue.register.PostgresServer.Own;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: whatever dies, every issue is made once, in the bytes of a run without a queue, and
 * nothing is left locked. Workers and whoever asks are processes of their own, ended by SIGKILL;
 * the database is stopped and begun again.
 */
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class QueueFaultIT {
  private static final int WORKERS = 2;
  @TempDir Path folder;
  private final List<Process> begun = new ArrayList<>();

  @AfterEach
  void end() throws InterruptedException {
    for (Process each : begun) {
      each.destroyForcibly().waitFor();
    }
  }

  @Test
  void aKillOfEachKindLeavesEveryPackIssuedOnce() throws Exception {
    kills(3, 2, 19);
  }

  @Test
  @Tag("long")
  void twoHundredKillsOfTwoHundredPacksLeaveEveryPackIssuedOnce() throws Exception {
    kills(
        Integer.getInteger("gradepost.kills", 200),
        Integer.getInteger("gradepost.killed-packs", 200),
        20);
  }

  private void kills(int wanted, int packs, long seed) throws Exception {
    Path plain = office("plain", packs);
    Path nation = office("nation", packs);
    Path notice = notice(packs / 2);
    Depot.begun(new Depot(plain).store());
    assertThat(asker("", plain, notice).waitFor()).as(() -> log("asker")).isZero();
    Random random = new Random(seed);
    int[] kinds = new int[3];
    try (Own server = PostgresServer.own(folder.resolve("data"))) {
      Depot.begun(Store.of(server.url(), Optional.empty()));
      List<Process> workers = new ArrayList<>();
      for (int i = 0; i < WORKERS; i++) {
        workers.add(worker(server.url(), i));
      }
      Process asker = asker(server.url(), nation, notice);
      for (int kill = 0; kill < wanted; kill++) {
        Thread.sleep(500 + random.nextInt(4000));
        int kind = kill % 5;
        if (kind == 0 || kind > 2) {
          int one = random.nextInt(WORKERS);
          workers.get(one).destroyForcibly().waitFor();
          workers.set(one, worker(server.url(), one));
          kinds[0]++;
        } else if (kind == 1) {
          asker.destroyForcibly().waitFor();
          asker = asker(server.url(), nation, notice);
          kinds[1]++;
        } else {
          server.restart();
          kinds[2]++;
        }
        if (!asker.isAlive()) {
          // It ends with an error where the database was lost, and is begun again by the clerk.
          asker = asker(server.url(), nation, notice);
        }
      }
      int code = asker.waitFor();
      for (int again = 0; code != 0 && again < 3; again++) {
        code = asker(server.url(), nation, notice).waitFor();
      }
      assertThat(code).as(() -> log("asker")).isZero();
      for (Process worker : workers) {
        assertThat(worker.isAlive()).as(() -> log("worker-0") + log("worker-1")).isTrue();
      }
      issuedOnce(server.url(), packs);
    }
    assertThat(files(nation.resolve("out"))).isEqualTo(files(plain.resolve("out")));
    assertThat(files(nation.resolve("routes"))).isEqualTo(files(plain.resolve("routes")));
    System.out.printf(
        "%d packs: %d kills of workers, %d of the asker, %d restarts of the database%n",
        packs, kinds[0], kinds[1], kinds[2]);
  }

  /** The worker lives; one that has enough makes the issues when they are asked for again. */
  @Test
  @Tag("long")
  void whatNeedsMoreMemoryThanAWorkerHasIsGivenUpAfterThreeTries() throws Exception {
    Path nation = office("nation", 2);
    Path notice = notice(1);
    try (Own server = PostgresServer.own(folder.resolve("data"))) {
      Depot.begun(Store.of(server.url(), Optional.empty()));
      Process small = worker(server.url(), 0, "-Xmx30m");
      assertThat(asker(server.url(), nation, notice).waitFor()).as(() -> log("asker")).isEqualTo(1);
      assertThat(log("asker"))
          .contains("0000/2: a worker ran out of memory at it 3 times")
          .contains("0001/2: a worker ran out of memory at it 3 times");
      assertThat(small.isAlive()).as(() -> log("worker-0")).isTrue();
      small.destroyForcibly().waitFor();
      worker(server.url(), 1, "-Xmx512m");
      assertThat(asker(server.url(), nation, notice).waitFor()).as(() -> log("asker")).isZero();
      issuedOnce(server.url(), 2);
    }
  }

  private Path office(String name, int packs) throws IOException {
    new SyntheticNetwork(folder.resolve(name + "/routes"), 2).packs(packs, 3);
    return folder.resolve(name);
  }

  private Path notice(int routes) throws IOException {
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (int route = 0; route < routes; route++) {
      String one = SyntheticNetwork.notice("T 1", route, "both", 900, 20);
      text.append(one.substring(one.indexOf("  - ")));
    }
    return Files.writeString(folder.resolve("notice.yaml"), text);
  }

  private Process worker(String url, int number) throws IOException {
    return worker(url, number, "-Xmx512m");
  }

  private Process worker(String url, int number, String memory) throws IOException {
    return started(
        "worker-" + number,
        memory,
        "gradepost.cli.Main",
        "work",
        "--register",
        url,
        "--threads",
        "1",
        "--sign-of-life",
        "1");
  }

  private Process asker(String url, Path work, Path notice) throws IOException {
    return started(
        "asker", "gradepost.app.queue.NoonAsker", url, work.toString(), notice.toString());
  }

  private Process started(String log, String... words) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:-UsePerfData",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Dorg.apache.pdfbox.filter.deflatelevel=4",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path", ""))));
    command.addAll(List.of(words));
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve(log + ".log").toFile()))
            .start();
    begun.add(process);
    return process;
  }

  private String log(String name) {
    try {
      return Files.readString(folder.resolve(name + ".log"));
    } catch (IOException e) {
      return e.toString();
    }
  }

  private static void issuedOnce(String url, int packs) throws Exception {
    try (Register register = Register.again(url)) {
      for (int pack = 0; pack < packs; pack++) {
        assertThat(register.latest("%04d".formatted(pack)).orElseThrow().number()).isEqualTo(2);
      }
      assertThat(register.list(Question.issues()).rows()).hasSize(2 * packs);
      assertThat(register.list(Question.acts()).rows().stream().map(r -> r.get(2) + r.get(3)))
          .doesNotHaveDuplicates()
          .filteredOn(act -> act.startsWith("issued"))
          .hasSize(packs);
      assertThat(register.undelivered()).isEmpty();
      assertThat(register.jobs().open()).isEmpty();
    }
    // What was done by a worker that died before it said so is found to be done, and is let go.
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    while (count(url, "SELECT COUNT(*) FROM scheduled_tasks") > 0 && System.nanoTime() < end) {
      Thread.sleep(200);
    }
    assertThat(count(url, "SELECT COUNT(*) FROM scheduled_tasks")).isZero();
    assertThat(count(url, "SELECT COUNT(*) FROM pg_locks WHERE locktype = 'advisory'")).isZero();
  }

  private static int count(String url, String sql) throws Exception {
    try (Connection c = DriverManager.getConnection(url);
        Statement s = c.createStatement();
        ResultSet r = s.executeQuery(sql)) {
      r.next();
      return r.getInt(1);
    }
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
}
