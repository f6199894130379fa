package gradepost.app;

import gradepost.reissue.register.PostgresServer;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("slow")
@Tag("postgres")
class PostgresTwoDepotsTest extends TwoDepots {
  @RegisterExtension static final PostgresServer SERVER = new PostgresServer();

  @Override
  String fresh(Path folder) throws Exception {
    return SERVER.fresh();
  }
}
