package gradepost.source.table;

import gradepost.text.Mistake;
import java.util.List;
import java.util.Optional;

/** How large a table may be that people type: one rule for every table that is not a recorder's. */
public final class TableSize {
  private static final int MOST_ROWS = 20_000;
  private static final int MOST_COLUMNS = 1000;

  /** What is wrong with the size of a table, if anything; its first row has the headings. */
  public static Optional<Mistake> beyond(List<? extends List<?>> rows) {
    if (rows.size() > MOST_ROWS + 1) {
      return Optional.of(TableMistakes.TOO_MANY_ROWS.with(MOST_ROWS));
    }
    return rows.stream().findFirst().filter(head -> head.size() > MOST_COLUMNS).isPresent()
        ? Optional.of(TableMistakes.TOO_MANY_COLUMNS.with(MOST_COLUMNS))
        : Optional.empty();
  }

  private TableSize() {}
}
