package gradepost.reissue.register;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
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

  private static EmbeddedPostgres.Builder builder() {
    return EmbeddedPostgres.builder()
        .setServerConfig("fsync", "off")
        .setPGStartupWait(Duration.ofSeconds(60));
  }

  private static EmbeddedPostgres begun() {
    try {
      return builder().start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A server by itself, which can be begun again with what it holds. */
  public static final class Own implements AutoCloseable {
    private final Path data;
    private EmbeddedPostgres server;

    private Own(Path data) throws IOException {
      this.data = data;
      this.server = builder().setDataDirectory(data).setCleanDataDirectory(false).start();
    }

    /** Address of its database. */
    public String url() {
      return server.getJdbcUrl(USER, USER);
    }

    /** Ends all connections, and begins again under the same address. */
    public void restart() throws IOException {
      int port = server.getPort();
      server.close();
      server = builder().setDataDirectory(data).setCleanDataDirectory(false).setPort(port).start();
    }

    @Override
    public void close() throws IOException {
      server.close();
    }
  }

  /**
   * A server by itself, to be stopped by whoever began it.
   *
   * @param data a folder for its data
   */
  public static Own own(Path data) throws IOException {
    return new Own(data);
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
