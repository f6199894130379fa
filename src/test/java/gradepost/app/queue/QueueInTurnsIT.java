package gradepost.app.queue;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.OperatingSystemMXBean;
import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.reissue.register.PostgresServer;
import gradepost.reissue.register.PostgresServer.Own;
import gradepost.reissue.register.Register;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Measures the processor time of a pack through the queue beside that of a plain run, in turns and
 * in one process: whatever else the machine does, it does to both. The same packs get one notice
 * after another. What a second process costs to begin is in {@link QueueCostIT}.
 */
@Tag("long")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class QueueInTurnsIT {
  private static final int PACKS = 10;
  private static final int WARM = 3;
  private static final int TURNS = Integer.getInteger("gradepost.turns", 12);
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void aPackCostsWhatItDoesWithoutAQueue(int threads) throws Exception {
    Path plain = office("plain");
    Path queued = office("queued");
    Store here = new Depot(plain).store();
    Depot.begun(here);
    Path data = folder.resolve("data");
    double plainS = 0;
    double queuedS = 0;
    double databaseS = 0;
    try (Own server = PostgresServer.own(data)) {
      Store there = Store.of(server.url(), Optional.of(Path.of(Store.REGISTER)));
      Depot.begun(there);
      for (int turn = 0; turn < WARM + TURNS; turn++) {
        Path notice = notice(turn);
        double start = ours();
        issued(NoonAsker.reissue(here, plain, notice, Optional.empty(), threads));
        double between = ours();
        double before = Cost.ofServer(data);
        throughTheQueue(there, queued, notice, threads);
        if (turn >= WARM) {
          plainS += between - start;
          queuedS += ours() - between;
          databaseS += Cost.ofServer(data) - before;
        }
      }
    }
    int made = PACKS * TURNS;
    System.out.printf(
        "%d threads, %d packs: plain %.3f s a pack, through the queue %.3f s, database %.3f s;"
            + " the queue costs %.1f %% more%n",
        threads,
        made,
        plainS / made,
        queuedS / made,
        databaseS / made,
        100 * (queuedS / plainS - 1));
  }

  private static void throughTheQueue(Store store, Path office, Path notice, int threads)
      throws Exception {
    CompletableFuture<Answer> asked =
        CompletableFuture.supplyAsync(
            () ->
                NoonAsker.reissue(
                    store, office, notice, Optional.of(Queue.awaited(left -> {})), threads),
            task -> new Thread(task, "asker").start());
    while (waiting(store.url()) < PACKS && !asked.isDone()) {
      Thread.sleep(50);
    }
    Worker.Pace pace = new Worker.Pace(threads, Duration.ofSeconds(15), true);
    assertThat(new Worker(store, pace, told -> {}).run().problems()).isEmpty();
    issued(asked.get());
  }

  private static void issued(Answer answer) {
    assertThat(answer.said())
        .as(answer.toString())
        .endsWith(PACKS + " packs: " + PACKS + " issued");
  }

  private static int waiting(String url) throws Exception {
    try (Register register = Register.again(url)) {
      return register.jobs().waiting();
    }
  }

  private Path office(String name) throws Exception {
    new SyntheticNetwork(folder.resolve(name + "/routes"), 2).packs(PACKS, 3);
    return folder.resolve(name);
  }

  private Path notice(int turn) throws Exception {
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (int route = 0; route * 2 < PACKS; route++) {
      String one = SyntheticNetwork.notice("T 1", route, "both", 900, 20 + turn);
      text.append(one.substring(one.indexOf("  - ")));
    }
    return Files.writeString(folder.resolve("notice-" + turn + ".yaml"), text);
  }

  private static double ours() {
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return system.getProcessCpuTime() / 1e9;
  }
}
