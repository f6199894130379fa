package gradepost.app.queue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import gradepost.reissue.register.PostgresServer;
import gradepost.reissue.register.PostgresServer.Own;
import gradepost.reissue.register.Register;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.FutureTask;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Measures what packs cost through the queue beside a plain run of as many threads. Both run at the
 * same time, so that a slow hour of the machine falls on both alike; all their processor time
 * counts, from the first instruction of a process to its last. Who makes issues is begun with the
 * options of a worker, who only asks with those of any other command.
 */
@Tag("long")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class QueueCostIT {
  private static final int PACKS = Integer.getInteger("gradepost.packs", 1000);
  private static final String MAKES = "-XX:TieredStopAtLevel=4";
  private static final String ASKS = "-XX:TieredStopAtLevel=1";
  @TempDir Path folder;

  /** Processor time of whoever asks, the worker and the database, and the clock, in seconds. */
  private record Spent(double asker, double worker, double database, double clock) {
    void print(String name, int threads) {
      System.out.printf(
          "%s, threads: %d, packs: %d: processor time of whoever asks %.1f s, of the worker %.1f s,"
              + " both %.4f s a pack, of the database %.1f s, clock %.0f s%n",
          name, threads, PACKS, asker, worker, (asker + worker) / PACKS, database, clock);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void packsThroughTheQueueAndPlainAtTheSameTime(int threads) throws Exception {
    FutureTask<Spent> plain = new FutureTask<>(() -> plain(threads));
    new Thread(plain).start();
    Spent queue = queue(threads);
    plain.get().print("plain", threads);
    queue.print("queue", threads);
  }

  private Spent plain(int threads) throws Exception {
    Path office = office("plain");
    Path log = office.resolve("log");
    Depot.begun(new Depot(office).store());
    long start = System.nanoTime();
    int code = asker(MAKES, log, "", office, String.valueOf(threads)).waitFor();
    double took = (System.nanoTime() - start) / 1e9;
    assertThat(code).as(Files.readString(log)).isZero();
    return new Spent(Cost.told(log, "asker"), 0, 0, took);
  }

  private Spent queue(int threads) throws Exception {
    Path office = office("queue");
    Path log = office.resolve("log");
    Path data = office.resolve("data");
    try (Own server = PostgresServer.own(data)) {
      Depot.begun(Store.of(server.url(), Optional.empty()));
      double before = Cost.ofServer(data);
      long start = System.nanoTime();
      Process asker = asker(ASKS, log, server.url(), office);
      waitForAsking(server.url(), asker);
      Process worker = begun(MAKES, log, "CountedWorker", server.url(), String.valueOf(threads));
      int code = asker.waitFor();
      double took = (System.nanoTime() - start) / 1e9;
      assertThat(worker.waitFor() + code).as(Files.readString(log)).isZero();
      double database = Cost.ofServer(data) - before;
      return new Spent(Cost.told(log, "asker"), Cost.told(log, "worker"), database, took);
    }
  }

  /** A folder of packs, of which a notice touches each. */
  private Path office(String name) throws IOException {
    Path office = folder.resolve(name);
    new SyntheticNetwork(office.resolve("routes"), 20).packs(PACKS, 3);
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (int route = 0; route * 20 < PACKS; route++) {
      String one = SyntheticNetwork.notice("T 1", route, "both", 900, 20);
      text.append(one.substring(one.indexOf("  - ")));
    }
    Files.writeString(office.resolve("notice.yaml"), text);
    return office;
  }

  private static Process asker(
      String compiler, Path log, String url, Path office, String... threads) throws IOException {
    List<String> words =
        new ArrayList<>(List.of(url, office.toString(), office.resolve("notice.yaml").toString()));
    words.addAll(List.of(threads));
    return begun(compiler, log, "NoonAsker", words.toArray(String[]::new));
  }

  private static void waitForAsking(String url, Process asker) throws Exception {
    try (Register register = Register.again(url)) {
      while (register.jobs().waiting() < PACKS && asker.isAlive()) {
        Thread.sleep(100);
      }
    }
  }

  private static Process begun(String compiler, Path log, String main, String... words)
      throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-XX:+UseSerialGC",
                compiler,
                "-Dorg.apache.pdfbox.filter.deflatelevel=4",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path", "")),
                "gradepost.app.queue." + main));
    command.addAll(List.of(words));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
        .start();
  }
}
