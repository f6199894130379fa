package gradepost.reissue.register;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** The same promises in PostgreSQL. */
@Tag("slow")
@EnabledOnOs(value = OS.LINUX, architectures = "amd64")
class PostgresRegisterTest extends RegisterContract {
  @Override
  String url() throws Exception {
    return PostgresServer.fresh();
  }
}
