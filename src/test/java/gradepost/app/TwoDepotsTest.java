package gradepost.app;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;

/** In SQLite, on a disk that both see; an ordinary run tries PostgreSQL alone. */
@Tag("long")
class TwoDepotsTest extends TwoDepots {
  @Override
  String fresh(Path folder) {
    return folder.resolve("register.db").toString();
  }
}
