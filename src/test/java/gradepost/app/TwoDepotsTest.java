package gradepost.app;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;

@Tag("slow")
class TwoDepotsTest extends TwoDepots {
  @Override
  String fresh(Path folder) {
    return folder.resolve("register.db").toString();
  }
}
