package gradepost.app.queue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import gradepost.reissue.register.PostgresServer;
import gradepost.reissue.register.PostgresServer.Own;
import gradepost.reissue.register.Register;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Measures the cost of a pack through the queue beside that of a plain run: processor time of
 * whoever asks and of the worker, and of the database by itself. Half of the packs first, so that
 * what a process costs to begin is not counted.
 */
@Tag("long")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class QueueCostIT {
  private static final int PACKS = Integer.getInteger("gradepost.packs", 1000);
  @TempDir Path folder;

  @Test
  void aPackByOneThreadAndByTwo() throws Exception {
    measure("plain, 2 threads", 0);
    measure("queue, 1 thread", 1);
    measure("queue, 2 threads", 2);
  }

  private void measure(String name, int threads) throws Exception {
    double[] few = run(name, threads, PACKS / 2);
    double[] all = run(name, threads, PACKS);
    int packs = PACKS - PACKS / 2;
    System.out.printf(
        "%s, %d packs: processor time of whoever asks %.3f s a pack, of the worker %.3f s, of the"
            + " database %.3f s, clock %.3f s%n",
        name,
        PACKS,
        (all[0] - few[0]) / packs,
        (all[1] - few[1]) / packs,
        (all[2] - few[2]) / packs,
        (all[3] - few[3]) / packs);
  }

  /** Processor time of whoever asks, the worker and the database, and the clock, in seconds. */
  private double[] run(String name, int threads, int packs) throws Exception {
    Path office = folder.resolve((name + packs).replaceAll("\\W", ""));
    new SyntheticNetwork(office.resolve("routes"), 20).packs(packs, 3);
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (int route = 0; route * 20 < packs; route++) {
      String one = SyntheticNetwork.notice("T 1", route, "both", 900, 20);
      text.append(one.substring(one.indexOf("  - ")));
    }
    Path notice = Files.writeString(office.resolve("notice.yaml"), text);
    Path log = office.resolve("log");
    if (threads == 0) {
      Depot.begun(new Depot(office).store());
      long start = System.nanoTime();
      int code = begun(log, "NoonAsker", "", office.toString(), notice.toString()).waitFor();
      double took = (System.nanoTime() - start) / 1e9;
      assertThat(code).as(Files.readString(log)).isZero();
      return new double[] {Cost.told(log, "asker"), 0, 0, took};
    }
    Path data = office.resolve("data");
    try (Own server = PostgresServer.own(data)) {
      Depot.begun(Store.of(server.url(), Optional.empty()));
      double before = Cost.ofServer(data);
      long start = System.nanoTime();
      Process asker = begun(log, "NoonAsker", server.url(), office.toString(), notice.toString());
      while (waiting(server.url()) < packs && asker.isAlive()) {
        Thread.sleep(100);
      }
      Process worker = begun(log, "CountedWorker", server.url(), String.valueOf(threads));
      int code = asker.waitFor();
      double took = (System.nanoTime() - start) / 1e9;
      assertThat(worker.waitFor() + code).as(Files.readString(log)).isZero();
      double database = Cost.ofServer(data) - before;
      return new double[] {Cost.told(log, "asker"), Cost.told(log, "worker"), database, took};
    }
  }

  private static int waiting(String url) throws Exception {
    try (Register register = Register.again(url)) {
      return register.jobs().waiting();
    }
  }

  private static Process begun(Path log, String main, String... words) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
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
