package gradepost.app;

import gradepost.reissue.register.PostgresServer;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

@Tag("slow")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class PostgresTwoDepotsTest extends TwoDepots {
  @Override
  String fresh(Path folder) throws Exception {
    return PostgresServer.fresh();
  }
}
