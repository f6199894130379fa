package gradepost.source.table;

import java.util.ArrayList;
import java.util.List;

/** Comma-separated values as RFC 4180 has them, but lines end with a line feed alone. */
public final class Csv {
  private static final char QUOTE = '"';

  /** The rows as text; cells are quoted where they must be. */
  public static String text(List<List<String>> rows) {
    StringBuilder text = new StringBuilder();
    for (List<String> row : rows) {
      text.append(String.join(",", row.stream().map(Csv::cell).toList())).append('\n');
    }
    return text.toString();
  }

  /**
   * A cell that no spreadsheet takes for a formula: an apostrophe before it makes it text. A number
   * with a sign stays as it is.
   */
  public static String unformed(String value) {
    return value.matches("(?s)'*[=+\\-@\\t\r].*")
            && !value.matches("[+-]?\\d+(\\.\\d+)?( ?\\p{L}+)?")
        ? "'" + value
        : value;
  }

  /** The cell as it was. */
  static String formed(String cell) {
    return cell.matches("(?s)'+[=+\\-@\\t\r].*") ? cell.substring(1) : cell;
  }

  private static String cell(String typed) {
    String value = unformed(typed);
    boolean plain = value.chars().noneMatch(c -> c == QUOTE || c == ',' || c == '\n' || c == '\r');
    return plain ? value : QUOTE + value.replace("\"", "\"\"") + QUOTE;
  }

  /**
   * Rows that are not wholly blank; between cells stands a comma, a semicolon or a tab.
   *
   * @throws TableRefused where a quotation mark is not closed, with the line
   */
  public static List<List<String>> rows(String text) {
    char separator = CsvText.separatorOf(text);
    List<List<String>> rows = new ArrayList<>();
    List<String> row = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    int line = 1;
    int opened = 1;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      line += c == '\n' ? 1 : 0;
      if (quoted) {
        if (c != QUOTE) {
          cell.append(c);
        } else if (i + 1 < text.length() && text.charAt(i + 1) == QUOTE) {
          cell.append(QUOTE);
          i++;
        } else {
          quoted = false;
        }
      } else if (c == QUOTE && cell.toString().isBlank()) {
        cell.setLength(0);
        quoted = true;
        opened = line;
      } else if (c == separator) {
        row.add(formed(cell.toString().strip()));
        cell.setLength(0);
      } else if (c == '\n') {
        row.add(formed(cell.toString().strip()));
        cell.setLength(0);
        addUnlessBlank(rows, row);
        row = new ArrayList<>();
      } else if (c != '\r') {
        cell.append(c);
      }
    }
    if (quoted) {
      throw new TableRefused(TableMistakes.OPEN_QUOTATION.with(opened));
    }
    row.add(formed(cell.toString().strip()));
    addUnlessBlank(rows, row);
    return rows;
  }

  private static void addUnlessBlank(List<List<String>> rows, List<String> row) {
    if (row.stream().anyMatch(c -> !c.isEmpty())) {
      rows.add(List.copyOf(row));
    }
  }

  private Csv() {}
}
