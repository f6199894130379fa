package gradepost.reissue.register;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Property: what a driver says does not reach the clerk. */
class RefusalTest {
  private static String lite(SQLiteErrorCode code, Optional<String> holder) {
    return Refusal.inWords(
        new IllegalStateException(new SQLiteException("[RAW] text of the driver", code)),
        () -> holder);
  }

  @Test
  void aLockedRegisterSaysWhoHoldsIt() {
    assertThat(lite(SQLiteErrorCode.SQLITE_BUSY, Optional.of("editor (process 12) of clerk")))
        .isEqualTo(
            "it is held by editor (process 12) of clerk; run the command again when that program"
                + " has ended");
    assertThat(lite(SQLiteErrorCode.SQLITE_BUSY_SNAPSHOT, Optional.empty()))
        .startsWith("another program holds it");
  }

  @Test
  void whatADriverSaysIsNeverSaidRaw() {
    for (SQLiteErrorCode code : SQLiteErrorCode.values()) {
      assertThat(lite(code, Optional.empty())).doesNotContain("RAW", "text of").isNotBlank();
    }
    for (String state : List.of("08001", "28P01", "3D000", "23505", "40001", "53100", "XX000")) {
      assertThat(Refusal.inWords(new SQLException("RAW", state), Optional::empty))
          .doesNotContain("RAW")
          .isNotBlank();
    }
    assertThat(Refusal.inWords(new SQLException("RAW", "XX000"), Optional::empty))
        .isEqualTo("the database refuses it (code XX000)");
  }
}
