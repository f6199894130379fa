package gradepost.reissue.register;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
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
        .hasMessage("the register cannot be opened: the file is not a register");
  }

  @Test
  void aRegisterOfALaterVersionIsLeftAlone() throws Exception {
    Register.open(url()).close();
    try (java.sql.Connection c = java.sql.DriverManager.getConnection(url());
        java.sql.Statement s = c.createStatement()) {
      s.executeUpdate(
          "INSERT INTO flyway_schema_history SELECT 99, '99', 'later', type, 'V99__later.sql',"
              + " checksum, installed_by, installed_on, 1, 1 FROM flyway_schema_history LIMIT 1");
    }
    assertThatThrownBy(() -> Register.open(url()))
        .isInstanceOf(RegisterException.class)
        .hasMessageStartingWith(
            "the register cannot be opened: a later version of this program has changed it");
  }
}
