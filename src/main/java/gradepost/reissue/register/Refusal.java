package gradepost.reissue.register;

import java.sql.SQLException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.sqlite.SQLiteException;

/** Why a database refuses, in our words: a driver speaks to programmers, and in no one language. */
final class Refusal {
  /** By the first characters of the five that the SQL standard and PostgreSQL define. */
  private static final Map<String, String> STATES =
      Map.ofEntries(
          Map.entry("08", RegisterText.NOT_REACHED),
          Map.entry("28", RegisterText.NO_ENTRY),
          Map.entry("3D", RegisterText.NO_DATABASE),
          Map.entry("42P01", RegisterText.NO_DATABASE),
          Map.entry("42501", RegisterText.READ_ONLY),
          Map.entry("25006", RegisterText.READ_ONLY),
          Map.entry("23505", RegisterText.MEANWHILE),
          Map.entry("40", RegisterText.MEANWHILE),
          Map.entry("55P03", RegisterText.LOCKED),
          Map.entry("53100", RegisterText.DISK_FULL),
          Map.entry("57P", RegisterText.NOT_REACHED));

  /**
   * What is said of an exception of the database or of what sits on it.
   *
   * @param holder who holds the register, as far as that can be known; asked only where it is held
   */
  static String inWords(Exception e, Supplier<Optional<String>> holder) {
    Optional<SQLException> sql = sql(e);
    if (sql.isEmpty()) {
      boolean driver = String.valueOf(e.getMessage()).contains("No database found");
      return driver ? RegisterText.NO_DRIVER : RegisterText.REFUSED.of("schema");
    } else if (sql.get() instanceof SQLiteException lite) {
      return lite(lite, holder);
    }
    String state = Optional.ofNullable(sql.get().getSQLState()).orElse("");
    if (state.isEmpty()
        || String.valueOf(sql.get().getMessage()).startsWith("No suitable driver")) {
      return RegisterText.NO_DRIVER;
    }
    for (int digits = state.length(); digits >= 2; digits--) {
      String known = STATES.get(state.substring(0, digits).toUpperCase(Locale.ROOT));
      if (known != null) {
        return known.equals(RegisterText.LOCKED) ? locked(holder) : known;
      }
    }
    return RegisterText.REFUSED.of(state);
  }

  private static String lite(SQLiteException e, Supplier<Optional<String>> holder) {
    String code = e.getResultCode().name();
    if (code.startsWith("SQLITE_BUSY") || code.startsWith("SQLITE_LOCKED")) {
      return locked(holder);
    } else if (code.startsWith("SQLITE_FULL")) {
      return RegisterText.DISK_FULL;
    } else if (code.startsWith("SQLITE_READONLY") || code.startsWith("SQLITE_PERM")) {
      return RegisterText.READ_ONLY;
    } else if (code.startsWith("SQLITE_CORRUPT") || code.startsWith("SQLITE_NOTADB")) {
      return RegisterText.DAMAGED;
    } else if (code.startsWith("SQLITE_CANTOPEN")) {
      return RegisterText.NOT_TO_BE_OPENED;
    } else if (code.startsWith("SQLITE_CONSTRAINT")) {
      return RegisterText.MEANWHILE;
    } else if (code.startsWith("SQLITE_IOERR")) {
      return RegisterText.DISK_FAULT;
    }
    return RegisterText.REFUSED.of(code);
  }

  private static String locked(Supplier<Optional<String>> holder) {
    return holder.get().map(RegisterText.LOCKED_BY::of).orElse(RegisterText.LOCKED);
  }

  private static Optional<SQLException> sql(Throwable e) {
    Throwable each = e;
    while (each != null) {
      if (each instanceof SQLException found) {
        return Optional.of(found);
      }
      each = each.getCause();
    }
    return Optional.empty();
  }

  private Refusal() {}
}
