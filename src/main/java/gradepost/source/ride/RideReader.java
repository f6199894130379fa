package gradepost.source.ride;

import gradepost.plan.Plan;
import gradepost.ride.Ride;
import gradepost.source.file.FileMistakes;
import gradepost.source.file.SourceFiles;
import gradepost.source.file.SourceFiles.Content;
import gradepost.source.route.RouteFrame;
import gradepost.source.table.CsvText;
import gradepost.source.table.TableMistakes;
import gradepost.units.Nearest;
import gradepost.yaml.Reader;
import gradepost.yaml.Reading;
import gradepost.yaml.SourcePosition;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Reads what was observed of a ride: an assessor's lines, an approach each, or a recorder's export.
 * The names of the columns tell which it is.
 */
public final class RideReader {
  /** A cell as typed, without its quotation marks, and where it begins. */
  record Cell(String text, SourcePosition spot) {}

  private static final char BYTE_ORDER_MARK = '\uFEFF';
  private final Content content;
  private final Plan plan;
  private final Reader in;

  public RideReader(SourceFiles files, String name, Plan plan) {
    this.content = files.read(name);
    this.plan = plan;
    this.in = new Reader(name, RouteFrame.of(plan.assignment().route()));
  }

  /** The ride, or what is wrong. */
  public Reading<Ride> read() {
    return content.match(
        held -> read(held.bytes()),
        unreadable -> {
          in.error(new SourcePosition(in.file(), 1, 1), FileMistakes.UNREADABLE.with(unreadable));
          return new Reading.Rejected<>(in.problems());
        });
  }

  private Reading<Ride> read(byte[] bytes) {
    List<List<Cell>> rows = rows(bytes);
    if (in.count() == 0 && rows.size() < 2) {
      in.error(
          new SourcePosition(in.file(), 1, 1),
          rows.isEmpty() ? RideMistakes.EMPTY_FILE : RideMistakes.HEADINGS_ONLY);
    }
    Optional<Ride> ride = in.count() > 0 ? Optional.empty() : read(rows);
    return Reading.of(ride.filter(r -> in.count() == 0), in.problems());
  }

  private List<List<Cell>> rows(byte[] bytes) {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      in.error(new SourcePosition(in.file(), 1, 1), RideMistakes.NOT_UTF_8);
      return List.of();
    }
    boolean marked = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK;
    List<List<Cell>> rows =
        CsvText.rows(marked ? text.substring(1) : text).stream()
            .map(row -> row.stream().map(this::cell).toList())
            .toList();
    if (!rows.isEmpty() && text.chars().filter(c -> c == '"').count() % 2 == 1) {
      List<Cell> last = rows.get(rows.size() - 1);
      in.error(last.get(last.size() - 1).spot(), RideMistakes.OPEN_QUOTATION);
    }
    return rows;
  }

  private Cell cell(CsvText.Cell cell) {
    return new Cell(cell.text().strip(), new SourcePosition(in.file(), cell.line(), cell.column()));
  }

  private Optional<Ride> read(List<List<Cell>> rows) {
    List<Cell> headings = rows.get(0);
    boolean recorded = headings.stream().anyMatch(h -> plain(h.text()).startsWith("distance"));
    List<List<Cell>> body = rows.subList(1, rows.size());
    for (List<Cell> row : body) {
      if (row.size() != headings.size()) {
        in.error(
            row.get(0).spot(),
            row.size() == 1
                ? RideMistakes.ONE_CELL.with(headings.size())
                : RideMistakes.OTHER_NUMBER_OF_CELLS.with(row.size(), headings.size()));
      }
    }
    if (in.count() > 0) {
      return Optional.empty();
    }
    return recorded
        ? new RecordedRide(plan, in).read(headings, body)
        : new TypedRide(plan, in).read(headings, body);
  }

  /** A heading in lower case with single spaces. */
  static String plain(String heading) {
    return heading.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ").strip();
  }

  /** Where each known column stands; unknown ones, double ones and missing ones are reported. */
  static Map<String, Integer> columns(
      List<Cell> headings, List<String> known, List<String> needed, Reader in) {
    Map<String, Integer> out = new HashMap<>();
    for (int i = 0; i < headings.size(); i++) {
      Cell heading = headings.get(i);
      String name = plain(heading.text().replaceAll("\\(.*\\)", ""));
      if (!known.contains(name)) {
        in.error(
            heading.spot(),
            heading.text().isBlank()
                ? RideMistakes.NO_HEADING.with(known)
                : RideMistakes.UNKNOWN_COLUMN.with(heading.text(), known, Nearest.to(name, known)));
      } else if (out.putIfAbsent(name, i) != null) {
        in.error(heading.spot(), TableMistakes.COLUMN_TWICE.with(name));
      }
    }
    for (String name : needed) {
      if (!out.containsKey(name)) {
        in.error(headings.get(0).spot(), RideMistakes.COLUMN_MISSING.with(name, known));
      }
    }
    return out;
  }
}
