package gradepost.reissue.register;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteRegisterTest extends RegisterContract {
  @TempDir Path folder;

  @Override
  String url() {
    return "jdbc:sqlite:" + folder.resolve("register.db");
  }

  @Test
  void aFileThatIsNoRegisterIsRefused() throws Exception {
    Path file = Files.writeString(folder.resolve("other.db"), "not a database at all, only text");
    assertThatThrownBy(() -> Register.open("jdbc:sqlite:" + file))
        .isInstanceOf(RegisterException.class)
        .hasMessageStartingWith("the register cannot be opened: ");
  }
}
