package gradepost.reissue.register;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Every row of a register, as values that fit any database it may be kept in. */
public final class Dump {
  /** Each table stands behind those that it refers to. */
  private static final List<String> TABLES =
      List.of(
          "act",
          "issue",
          "issue_file",
          "sheet",
          "staff_entry",
          "copy_entry",
          "acknowledgement_entry",
          "sign_off_entry",
          "recall_entry",
          "account",
          "counter");

  /** Columns of acts that name a later act. */
  private static final List<String> LATER = List.of("undone", "forgotten");

  /**
   * The rows of a table.
   *
   * @param rows texts, whole numbers as {@link Long}, and nothing
   */
  public record Table(List<String> columns, List<List<@Nullable Object>> rows) {
    /** Copies the lists; a cell may hold nothing. */
    public Table {
      columns = List.copyOf(columns);
      rows = Collections.unmodifiableList(new ArrayList<>(rows));
    }
  }

  private final Ledger ledger;

  Dump(Ledger ledger) {
    this.ledger = ledger;
  }

  /** The tables by name, all as they are at one moment. */
  public Map<String, Table> tables() throws RegisterException {
    return ledger.reading(
        db -> {
          Map<String, Table> all = new LinkedHashMap<>();
          for (String name : TABLES) {
            all.put(name, db.table(name));
          }
          return all;
        });
  }

  /**
   * Fills a register that was begun and has no entry yet: with everything, or with nothing.
   *
   * @throws RegisterException where it has entries, or the tables are another version's
   */
  public void fill(Map<String, Table> tables) throws RegisterException {
    ledger.together(
        () ->
            ledger.reading(
                db -> {
                  if (!db.rows("SELECT 1 FROM act LIMIT 1").isEmpty()) {
                    throw new RegisterException(RegisterText.NOT_FRESH);
                  }
                  if (!tables.keySet().equals(Set.copyOf(TABLES))) {
                    throw new RegisterException(RegisterText.OTHER_TABLES);
                  }
                  db.change("DELETE FROM counter");
                  for (String name : TABLES) {
                    fill(db, name, tables.getOrDefault(name, new Table(List.of(), List.of())));
                  }
                  return true;
                }));
  }

  private static void fill(Database db, String name, Table table)
      throws SQLException, RegisterException {
    List<String> columns = db.table(name).columns();
    if (!Set.copyOf(columns).equals(Set.copyOf(table.columns()))) {
      throw new RegisterException(RegisterText.OTHER_TABLES);
    }
    List<Integer> later =
        LATER.stream().map(table.columns()::indexOf).filter(at -> at >= 0).toList();
    String sql =
        "INSERT INTO %s (%s) VALUES (%s)"
            .formatted(
                name,
                String.join(", ", table.columns()),
                String.join(", ", Collections.nCopies(table.columns().size(), "?")));
    for (List<@Nullable Object> row : table.rows()) {
      List<@Nullable Object> first = new ArrayList<>(row);
      later.forEach(at -> first.set(at, null));
      db.insert(sql, first);
    }
    // What took an act back, or a name out of it, comes later than the act.
    for (List<@Nullable Object> row : table.rows()) {
      for (int at : later) {
        Object by = row.get(at);
        Object act = row.get(table.columns().indexOf("id"));
        if (by != null && act != null) {
          db.change(
              "UPDATE act SET %s = ? WHERE id = ?".formatted(table.columns().get(at)), by, act);
        }
      }
    }
  }
}
