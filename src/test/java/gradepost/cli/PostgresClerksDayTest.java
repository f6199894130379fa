package gradepost.cli;

import gradepost.reissue.register.PostgresServer;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;

@Tag("postgres")
class PostgresClerksDayTest extends ClerksDay {
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
  String fresh() throws Exception {
    return server.orElseThrow().fresh();
  }
}
