package gradepost.reissue.register;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The same promises in PostgreSQL. */
@Tag("slow")
@Tag("postgres")
class PostgresRegisterTest extends RegisterContract {
  @RegisterExtension static final PostgresServer SERVER = new PostgresServer();

  @Override
  String url() throws Exception {
    return SERVER.fresh();
  }
}
