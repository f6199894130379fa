package gradepost.app.queue;

import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import gradepost.app.issue.Layout;
import gradepost.app.issue.Maker;
import java.io.IOException;
import java.util.Optional;

/** What those who ask and those who work have in common. */
final class Connections {
  private static final int DIGITS = 12;

  /** How long a lost database is waited for before a task fails, in milliseconds. */
  private static final int PATIENCE_MS = 10_000;

  /** Connections for the scheduler, which are made again where they are lost. */
  static HikariDataSource to(String url, int most) {
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(url);
    config.setMaximumPoolSize(most);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(PATIENCE_MS);
    config.setInitializationFailTimeout(PATIENCE_MS);
    return new HikariDataSource(config);
  }

  /** What the tasks of this program are called: those of one that makes other bytes are not its. */
  static TaskDescriptor<IssueTask> tasks() throws IOException {
    String digest = Maker.digest(new Layout(Optional.empty()));
    return TaskDescriptor.of("issue-" + digest.substring(0, DIGITS), IssueTask.class);
  }

  private Connections() {}
}
