package gradepost.source.table;

import java.util.ArrayList;
import java.util.List;
import org.yaml.snakeyaml.error.Mark;

/**
 * A table of cells with their places, by RFC 4180: cells in quotation marks may hold separators,
 * line ends and doubled quotation marks. The separator is a comma, or a semicolon or a tab where
 * the first line has more of them. Empty lines and lines that begin with {@code #} are left out.
 */
public final class CsvText {

  /** A cell; line and column count from 1. */
  public record Cell(String text, int line, int column) {
    /** Its place, as YAML marks one. */
    public Mark mark() {
      return new Mark("", 0, line - 1, column - 1, new int[0], 0);
    }
  }

  private final String text;
  private final char separator;
  private int at;
  private int line = 1;
  private int lineStart;

  private CsvText(String text, char separator) {
    this.text = text;
    this.separator = separator;
  }

  /** What stands between the cells of a table, by the line of its headings. */
  static char separatorOf(String text) {
    return separator(
        text.lines().filter(l -> !l.isBlank() && !l.startsWith("#")).findFirst().orElse(""));
  }

  private static char separator(String headings) {
    char best = ',';
    for (char c : new char[] {';', '\t'}) {
      best = count(headings, c) > count(headings, best) ? c : best;
    }
    return best;
  }

  private static long count(String text, char wanted) {
    return text.chars().filter(c -> c == wanted).count();
  }

  /** The rows of a table; blank ones and comments are left out. */
  public static List<List<Cell>> rows(String text) {
    return rows(text, new CsvText(text, separatorOf(text)));
  }

  /**
   * The same of a table that has lines before its headings.
   *
   * @param headings the line of its headings, which tells the separator
   */
  public static List<List<Cell>> rows(String text, String headings) {
    return rows(text, new CsvText(text, separator(headings)));
  }

  private static List<List<Cell>> rows(String text, CsvText table) {
    List<List<Cell>> rows = new ArrayList<>();
    while (table.at < text.length()) {
      boolean comment = text.charAt(table.at) == '#';
      List<Cell> row = table.row();
      if (!comment && row.stream().anyMatch(c -> !c.text().isBlank())) {
        rows.add(row);
      }
    }
    return rows;
  }

  private List<Cell> row() {
    List<Cell> row = new ArrayList<>();
    row.add(cell());
    while (at < text.length() && text.charAt(at) == separator) {
      at++;
      row.add(cell());
    }
    if (at < text.length() && text.charAt(at) == '\r') {
      at++;
    }
    if (at < text.length() && text.charAt(at) == '\n') {
      at++;
      newLine();
    }
    return row;
  }

  private void newLine() {
    line++;
    lineStart = at;
  }

  private Cell cell() {
    int startLine = line;
    int column = at - lineStart + 1;
    if (at < text.length() && text.charAt(at) == '"') {
      return new Cell(quoted(), startLine, column);
    }
    int start = at;
    while (at < text.length() && text.charAt(at) != separator && !lineEnd(text.charAt(at))) {
      at++;
    }
    return new Cell(text.substring(start, at).strip(), startLine, column);
  }

  private String quoted() {
    StringBuilder out = new StringBuilder();
    at++;
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c == '"' && at < text.length() && text.charAt(at) == '"') {
        at++;
      } else if (c == '"') {
        break;
      } else if (c == '\n') {
        newLine();
      }
      out.append(c);
    }
    while (at < text.length() && text.charAt(at) != separator && !lineEnd(text.charAt(at))) {
      out.append(text.charAt(at++));
    }
    return out.toString();
  }

  private static boolean lineEnd(char c) {
    return c == '\n' || c == '\r';
  }
}
