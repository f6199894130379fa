package gradepost.reissue.register;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A server of PostgreSQL for the tests, its binaries from Maven. All tests of a Java process share
 * one, each with a database of its own; it ends with the process.
 */
public final class PostgresServer {
  private static final String USER = "postgres";
  private static final AtomicInteger DATABASES = new AtomicInteger();

  /** Begun when it is first asked for. */
  private static final class Shared {
    static final EmbeddedPostgres SERVER = begun();
  }

  /** A server of one's own, to be stopped by whoever began it. */
  public static EmbeddedPostgres begun() {
    try {
      return EmbeddedPostgres.builder()
          .setServerConfig("fsync", "off")
          .setPGStartupWait(Duration.ofSeconds(60))
          .start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Address of a database that nothing is in. */
  public static String fresh() throws SQLException {
    String name = "register" + DATABASES.incrementAndGet();
    try (Connection c = Shared.SERVER.getPostgresDatabase().getConnection();
        Statement s = c.createStatement()) {
      s.execute("CREATE DATABASE " + name);
    }
    return Shared.SERVER.getJdbcUrl(USER, name);
  }

  private PostgresServer() {}
}
