package gradepost.app;

import java.nio.file.Path;

class TwoDepotsTest extends TwoDepots {
  @Override
  String fresh(Path folder) {
    return folder.resolve("register.db").toString();
  }
}
