package gradepost.source.ride;

import gradepost.source.ride.RideReader.Cell;
import gradepost.source.route.RouteFrame;
import gradepost.source.table.CsvText;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * The text of a file with what was observed: in UTF-8, in UTF-16 with its mark, or else as
 * Windows-1252, which is told. Lines may stand before the headings.
 */
final class RideText {
  /**
   * A table.
   *
   * @param before the rows before the headings
   * @param recorded whether it is a recorder's export
   * @param problems of the text by itself
   */
  record Table(
      List<List<Cell>> before,
      List<Cell> headings,
      List<List<Cell>> rows,
      boolean recorded,
      Problems problems) {}

  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final String APPROACH = "approach";

  private final Reader in;
  private final String text;

  RideText(byte[] bytes, String name) {
    in = new Reader(name, RouteFrame.UNKNOWN);
    String decoded = decoded(bytes);
    text = decoded.startsWith(BYTE_ORDER_MARK) ? decoded.substring(1) : decoded;
  }

  private String decoded(byte[] bytes) {
    if (marked(bytes, 0xFE, 0xFF) || marked(bytes, 0xFF, 0xFE)) {
      return new String(bytes, StandardCharsets.UTF_16);
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      in.add(
          new Problem(new SourcePosition(in.file(), 1, 1), Severity.NOTE, RideMistakes.NOT_UTF_8));
      return new String(bytes, Charset.forName("windows-1252"));
    }
  }

  private static boolean marked(byte[] bytes, int first, int second) {
    return bytes.length > 1 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
  }

  /** The table; where no line looks like headings the first one is taken for them. */
  Table table() {
    String line =
        text.lines()
            .filter(RideText::looksLikeHeadings)
            .filter(this::holdsHeadings)
            .findFirst()
            .or(() -> text.lines().filter(RideText::looksLikeHeadings).findFirst())
            .orElse("");
    List<List<Cell>> rows =
        (line.isEmpty() ? CsvText.rows(text) : CsvText.rows(text, line))
            .stream().map(this::cells).toList();
    if (!rows.isEmpty() && text.chars().filter(c -> c == '"').count() % 2 == 1) {
      List<Cell> last = rows.get(rows.size() - 1);
      in.error(last.get(last.size() - 1).spot(), RideMistakes.OPEN_QUOTATION);
    }
    if (rows.isEmpty()) {
      return new Table(List.of(), List.of(), List.of(), false, in.problems());
    }
    int at =
        IntStream.range(0, rows.size())
            .filter(i -> line.isEmpty() || isHeading(rows.get(i)))
            .findFirst()
            .orElse(0);
    List<Cell> headings = rows.get(at);
    return new Table(
        rows.subList(0, at),
        headings,
        rows.subList(at + 1, rows.size()),
        recorded(headings),
        in.problems());
  }

  private List<Cell> cells(List<CsvText.Cell> row) {
    return row.stream().map(this::cell).toList();
  }

  private static boolean recorded(List<Cell> headings) {
    return headings.stream().anyMatch(h -> RideReader.name(h.text()).equals("distance"));
  }

  private static boolean isHeading(List<Cell> row) {
    return RideReader.name(row.get(0).text()).equals(APPROACH)
        || (recorded(row) && row.stream().anyMatch(h -> RideReader.name(h.text()).equals("speed")));
  }

  private boolean holdsHeadings(String line) {
    return CsvText.rows(line, line).stream()
        .findFirst()
        .map(this::cells)
        .filter(RideText::isHeading)
        .isPresent();
  }

  private static boolean looksLikeHeadings(String line) {
    String plain = line.toLowerCase(Locale.ROOT).strip();
    return plain.replace("\"", "").startsWith(APPROACH)
        || (plain.contains("distance") && plain.contains("speed"));
  }

  private Cell cell(CsvText.Cell cell) {
    return new Cell(cell.text().strip(), new SourcePosition(in.file(), cell.line(), cell.column()));
  }
}
