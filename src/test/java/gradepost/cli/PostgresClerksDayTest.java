package gradepost.cli;

import gradepost.reissue.register.PostgresServer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("slow")
@Tag("postgres")
class PostgresClerksDayTest extends ClerksDay {
  @RegisterExtension static final PostgresServer SERVER = new PostgresServer();

  @Override
  String fresh() throws Exception {
    return SERVER.fresh();
  }
}
