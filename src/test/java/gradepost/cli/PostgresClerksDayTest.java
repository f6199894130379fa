package gradepost.cli;

import gradepost.reissue.register.PostgresServer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

@Tag("long")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class PostgresClerksDayTest extends ClerksDay {
  @Override
  String fresh() throws Exception {
    return PostgresServer.fresh();
  }
}
