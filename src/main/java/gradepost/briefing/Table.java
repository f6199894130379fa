package gradepost.briefing;

import java.util.List;

/**
 * A table with a heading of its own. Where it has no rows, {@code whenEmpty} is printed instead: an
 * empty table never looks like a forgotten one.
 *
 * @param id unique in the document, the target of links
 * @param name short and stable, for a house style to recognise it by
 */
public record Table(
    String id,
    String name,
    String title,
    String note,
    List<Column> columns,
    List<Row> rows,
    String whenEmpty) {

  /** A heading and how its cells stand: {@code text}, {@code place} or {@code number}. */
  public record Column(String heading, String kind) {}

  /**
   * A row.
   *
   * @param changed since the issue before
   * @param grave to be marked
   */
  public record Row(List<String> cells, boolean changed, boolean grave) {
    public Row {
      cells = List.copyOf(cells);
    }

    public static Row of(String... cells) {
      return new Row(List.of(cells), false, false);
    }
  }

  public Table {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
    for (Row row : rows) {
      if (row.cells().size() != columns.size()) {
        throw new IllegalArgumentException(title + ": a row of " + row.cells());
      }
    }
  }
}
