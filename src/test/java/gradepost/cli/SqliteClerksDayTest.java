package gradepost.cli;

import org.junit.jupiter.api.Tag;

@Tag("slow")
class SqliteClerksDayTest extends ClerksDay {
  @Override
  String fresh() {
    return folder.resolve("reg/register.db").toString();
  }
}
