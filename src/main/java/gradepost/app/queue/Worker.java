package gradepost.app.queue;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.zaxxer.hikari.HikariDataSource;
import gradepost.app.store.Answer;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Store;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Consumer;
import javax.sql.DataSource;

/** A process that makes issues others ask for, until it is stopped or nothing is left. */
public final class Worker {
  /** After so many missed signs of life a worker is taken for dead. */
  public static final int MISSED = 4;

  private static final Duration POLLING = Duration.ofMillis(500);
  private static final Duration AGAIN = Duration.ofSeconds(5);
  private static final Duration FAREWELL = Duration.ofSeconds(60);

  /** The fewest connections: to look for work, to give signs of life, and to note what is done. */
  private static final int CONNECTIONS = 4;

  private final Store store;
  private final Pace pace;
  private final Consumer<Answer> told;

  /**
   * How a worker goes about it.
   *
   * @param threads how many issues it makes at once
   * @param sign how often it gives a sign of life
   * @param untilDone whether it ends when nothing is left to do
   */
  public record Pace(int threads, Duration sign, boolean untilDone) {}

  /**
   * @param told is told what became of each issue, by several threads
   */
  public Worker(Store store, Pace pace, Consumer<Answer> told) {
    this.store = store;
    this.pace = pace;
    this.told = told;
  }

  /** Works; returns when it is stopped, or with what keeps it from working. */
  public Answer run() {
    if (!Store.isPostgres(store.url())) {
      return Answer.refused("error: " + QueueText.NO_POSTGRES.inWords());
    } else if (!store.exists()) {
      return store.missing();
    }
    try {
      Patience.until(() -> store.open().close());
      scheduled();
      return Answer.GOOD;
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private void scheduled() throws IOException {
    TaskDescriptor<IssueTask> tasks = Connections.tasks();
    WorkOfThreads work = new WorkOfThreads(store, told);
    OneTimeTask<IssueTask> task =
        Tasks.oneTime(tasks)
            .onFailure((done, operations) -> operations.reschedule(done, later(done.getTimeDone())))
            .onDeadExecutionRevive()
            .execute((instance, context) -> work.on(instance.getData()));
    try (HikariDataSource connections = Connections.to(store.url(), connections(pace));
        Unmade unmade = new Unmade(store.url())) {
      Scheduler scheduler = scheduler(connections, task, pace);
      Thread stop = new Thread(scheduler::stop, "stop");
      Runtime.getRuntime().addShutdownHook(stop);
      scheduler.start();
      int left = 0;
      do {
        Queue.pause(left);
        left = pace.untilDone() ? unmade.count() : 0;
      } while (!pace.untilDone() || left > 0);
      scheduler.stop();
      Runtime.getRuntime().removeShutdownHook(stop);
    }
  }

  static int connections(Pace pace) {
    return CONNECTIONS + pace.threads() / 4;
  }

  /** As many tasks again as there are threads are taken before they are needed: none waits. */
  static Scheduler scheduler(DataSource connections, Task<?> task, Pace pace) {
    return Scheduler.create(connections, task)
        .serializer(new Json())
        .threads(pace.threads())
        .pollUsingLockAndFetch(1.0, 2.0)
        .pollingInterval(POLLING)
        .heartbeatInterval(pace.sign())
        .missedHeartbeatsLimit(MISSED)
        .shutdownMaxWait(FAREWELL)
        .build();
  }

  private static Instant later(Instant failed) {
    return failed.plus(AGAIN);
  }
}
