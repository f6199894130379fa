package gradepost.reissue.register;

import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;

/** The same promises in PostgreSQL. */
@Tag("postgres")
class PostgresRegisterTest extends RegisterContract {
  private static Optional<PostgresServer> server = Optional.empty();

  @BeforeAll
  static void start() throws Exception {
    server = Optional.of(new PostgresServer());
  }

  @AfterAll
  static void stop() throws Exception {
    server.orElseThrow().stop();
  }

  @Override
  String url() throws Exception {
    return server.orElseThrow().fresh();
  }
}
