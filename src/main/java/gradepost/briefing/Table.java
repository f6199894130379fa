package gradepost.briefing;

import java.util.List;
import java.util.function.Predicate;

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
   * @param link the anchor that its last cell leads to; empty text where it leads nowhere
   */
  public record Row(List<String> cells, boolean changed, boolean grave, String link) {
    public Row {
      cells = List.copyOf(cells);
    }

    public Row(List<String> cells, boolean changed, boolean grave) {
      this(cells, changed, grave, "");
    }

    /** A plain row of these cells. */
    public static Row of(String... cells) {
      return new Row(List.of(cells), false, false);
    }
  }

  /** The same table; a link that leads out of the document is none. */
  public Table linkedTo(Predicate<String> anchors) {
    return with(
        rows.stream()
            .map(
                r ->
                    new Row(
                        r.cells(), r.changed(), r.grave(), anchors.test(r.link()) ? r.link() : ""))
            .toList());
  }

  /** The same table with other rows. */
  public Table with(List<Row> others) {
    return new Table(id, name, title, note, columns, others, whenEmpty);
  }

  /** The same table with another identity and title. */
  public Table called(String otherId, String otherTitle) {
    return new Table(otherId, name, otherTitle, note, columns, rows, whenEmpty);
  }

  /** The same table without its note. */
  public Table withoutNote() {
    return new Table(id, name, title, "", columns, rows, whenEmpty);
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
