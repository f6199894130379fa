package gradepost.reissue.register;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.sqlite.BusyHandler;
import org.sqlite.SQLiteConnection;

/** Waits for a register in a file that another program holds, and says so when it begins to. */
final class Patience extends BusyHandler {
  /** How long, every time. */
  static final Duration MOST = Duration.ofSeconds(10);

  private static final long STEP_MS = 50;

  private final Supplier<Optional<String>> holder;
  private final Consumer<String> told;

  private Patience(Supplier<Optional<String>> holder, Consumer<String> told) {
    this.holder = holder;
    this.told = told;
  }

  /**
   * A connection waits with patience from now on.
   *
   * @param holder who holds the register, as far as that can be known
   * @param told is told who holds it, and how long it is waited for
   */
  static void on(Connection connection, Supplier<Optional<String>> holder, Consumer<String> told)
      throws SQLException {
    if (connection.isWrapperFor(SQLiteConnection.class)) {
      setHandler(connection, new Patience(holder, told));
    }
  }

  @Override
  protected int callback(int before) {
    if (before == 0) {
      String seconds = String.valueOf(MOST.toSeconds());
      told.accept(
          holder
              .get()
              .map(who -> RegisterText.WAITING_FOR.of(new RegisterText.Wait(who, seconds)))
              .orElseGet(() -> RegisterText.WAITING.of(seconds)));
    }
    if (before * STEP_MS >= MOST.toMillis()) {
      return 0;
    }
    try {
      Thread.sleep(STEP_MS);
      return 1;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return 0;
    }
  }
}
