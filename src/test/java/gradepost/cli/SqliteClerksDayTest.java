package gradepost.cli;

class SqliteClerksDayTest extends ClerksDay {
  @Override
  String fresh() {
    return folder.resolve("reg/register.db").toString();
  }
}
