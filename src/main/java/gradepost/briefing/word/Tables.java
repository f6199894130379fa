package gradepost.briefing.word;

import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.List;

/** Builds a table whose headings are the texts {@code table.<name>.columns}, set off by bars. */
public final class Tables {
  private final Words words;
  private final String id;
  private final String name;
  private final List<Table.Column> more = new ArrayList<>();
  private final List<Table.Row> rows = new ArrayList<>();
  private String title;

  public Tables(Words words, String part, String name) {
    this.words = words;
    this.id = part + "-" + name;
    this.name = name;
    this.title = words.text("table." + name + ".title");
  }

  /** Another title than that of the texts. */
  public Tables titled(String words) {
    title = words;
    return this;
  }

  /** A column after those of the texts. */
  public Tables column(String heading, String kind) {
    more.add(new Table.Column(heading, kind));
    return this;
  }

  /** Adds a row. */
  public Tables row(String... cells) {
    return row(false, cells);
  }

  /** Adds a row; a grave one is set off. */
  public Tables row(boolean grave, String... cells) {
    return linked("", grave, cells);
  }

  /** A row whose last cell leads to an anchor of the document. */
  public Tables linked(String link, boolean grave, String... cells) {
    rows.add(
        new Table.Row(
            java.util.Arrays.stream(cells).map(words::orDash).toList(), false, grave, link));
    return this;
  }

  /** The table; what stands in its place when it is empty is the text {@code table.<name>.none}. */
  public Table build() {
    return build(words.text("table." + name + ".none"));
  }

  /** The table, with another text for when it is empty. */
  public Table build(String whenEmpty) {
    List<Table.Column> columns = new ArrayList<>();
    for (String heading : words.text("table." + name + ".columns").split("\\|", -1)) {
      String plain = heading.strip();
      String kind = plain.startsWith("@") ? "place" : plain.startsWith("#") ? "number" : "text";
      columns.add(new Table.Column(kind.equals("text") ? plain : plain.substring(1), kind));
    }
    columns.addAll(more);
    String noteKey = "table." + name + ".note";
    return new Table(
        id,
        name,
        title,
        words.messages().has(noteKey) ? words.text(noteKey) : "",
        columns,
        rows,
        whenEmpty);
  }
}
