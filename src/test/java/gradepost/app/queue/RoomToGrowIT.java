package gradepost.app.queue;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.zaxxer.hikari.HikariDataSource;
import gradepost.reissue.register.PostgresServer;
import gradepost.reissue.register.PostgresServer.Own;
import gradepost.reissue.register.Register;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Measures what the queue costs by itself: tasks that only wait as long as a pack takes, with as
 * many threads as thirty-two machines of two cores have.
 */
@Tag("long")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class RoomToGrowIT {
  private static final int TASKS = Integer.getInteger("gradepost.tasks", 100_000);
  private static final int WAIT_MS = Integer.getInteger("gradepost.wait", 1200);
  private static final int WORKERS = 8;
  private static final int THREADS = 8;
  @TempDir Path folder;

  @Test
  void tasksThatOnlyWait() throws Exception {
    Path data = folder.resolve("data");
    Set<Integer> done = ConcurrentHashMap.newKeySet();
    AtomicInteger twice = new AtomicInteger();
    TaskDescriptor<Integer> kind = TaskDescriptor.of("wait", Integer.class);
    OneTimeTask<Integer> task =
        Tasks.oneTime(kind)
            .execute(
                (instance, context) -> {
                  pause();
                  if (!done.add(instance.getData())) {
                    twice.incrementAndGet();
                  }
                });
    Worker.Pace pace = new Worker.Pace(THREADS, Duration.ofSeconds(15), false);
    try (Own server = PostgresServer.own(data)) {
      Register.open(server.url()).close();
      try (HikariDataSource connections =
          Connections.to(server.url(), WORKERS * Worker.connections(pace))) {
        Scheduler[] workers = new Scheduler[WORKERS];
        for (int i = 0; i < WORKERS; i++) {
          workers[i] = Worker.scheduler(connections, task, pace);
        }
        Stream<TaskInstance<?>> all =
            IntStream.range(0, TASKS)
                .mapToObj(i -> kind.instance(String.valueOf(i)).data(i).build());
        workers[0].scheduleBatch(all, Instant.EPOCH);
        double costBefore = Cost.ofServer(data);
        long start = System.nanoTime();
        for (Scheduler worker : workers) {
          worker.start();
        }
        while (done.size() < TASKS) {
          Thread.sleep(100);
        }
        double took = (System.nanoTime() - start) / 1e9;
        double cost = Cost.ofServer(data) - costBefore;
        for (Scheduler worker : workers) {
          worker.stop();
        }
        double ideal = TASKS * (WAIT_MS / 1000.0) / (WORKERS * THREADS);
        System.out.printf(
            "%d tasks of %d ms, %d threads: %.1f s, ideal %.1f s (%.1f %% more); database %.1f s,"
                + " %.3f of a core, %.2f ms a task%n",
            TASKS,
            WAIT_MS,
            WORKERS * THREADS,
            took,
            ideal,
            100 * (took / ideal - 1),
            cost,
            cost / took,
            1000 * cost / TASKS);
      }
    }
    assertThat(done).hasSize(TASKS);
    assertThat(twice).hasValue(0);
  }

  private static void pause() {
    try {
      Thread.sleep(WAIT_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
