package gradepost.app;

import gradepost.app.store.Disk;
import gradepost.reissue.register.RegisterException;
import gradepost.source.table.CsvText;
import gradepost.source.table.TableSize;
import gradepost.source.table.TableText;
import gradepost.text.Mistake;
import gradepost.units.Nearest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A table of people and packs: its headings looked at, its rows by column. */
final class BatchTable {
  private final BatchAct act;
  private final Path file;
  private final List<String> problems = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final List<List<CsvText.Cell>> rows;
  private final List<String> headings;

  BatchTable(BatchAct act, Path file) throws IOException {
    this.act = act;
    this.file = file;
    String text =
        TableText.of(Disk.name(file), Disk.typed(file), problem -> notes.add(problem.text()));
    this.rows = CsvText.rows(text);
    Optional<Mistake> size = TableSize.beyond(rows);
    if (size.isPresent()) {
      problems.add(told(1, 1, size.get().inWords()));
      this.headings = List.of();
    } else if (rows.size() < 2) {
      problems.add(told(1, 1, AppText.EMPTY_TABLE.inWords()));
      this.headings = List.of();
    } else {
      this.headings = headings(rows.get(0));
    }
  }

  /** What is wrong with its headings. */
  List<String> problems() {
    return problems;
  }

  /** What is told of it besides: how it was read. */
  List<String> notes() {
    return notes;
  }

  /** Below the headings. */
  List<List<CsvText.Cell>> rows() {
    return rows.subList(1, rows.size());
  }

  /** A problem in the house form, at the beginning of a row. */
  String told(List<CsvText.Cell> row, String what) {
    return told(row.get(0).line(), row.get(0).column(), what);
  }

  private String told(int line, int column, String what) {
    return "%s:%d:%d: error: %s".formatted(file, line, column, what);
  }

  private List<String> headings(List<CsvText.Cell> row) {
    List<String> headings = new ArrayList<>();
    for (CsvText.Cell cell : row) {
      String name = cell.text().strip().toLowerCase(Locale.ROOT);
      if (!act.columns().contains(name)) {
        problems.add(
            told(
                cell.line(),
                cell.column(),
                AppText.UNKNOWN_COLUMN
                    .with(name, act.columns(), Nearest.to(name, act.columns()))
                    .inWords()));
      }
      headings.add(name);
    }
    for (String needed : act.needed()) {
      if (!headings.contains(needed)) {
        problems.add(
            told(
                row.get(0).line(),
                row.get(0).column(),
                AppText.NO_COLUMN.with(needed, act.needed()).inWords()));
      }
    }
    return headings;
  }

  /** The cells of a row by their columns; all that must be there are. */
  Map<String, String> cells(List<CsvText.Cell> row) throws RegisterException {
    Map<String, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < headings.size(); i++) {
      cells.put(headings.get(i), i < row.size() ? row.get(i).text().strip() : "");
    }
    for (String needed : act.needed()) {
      if (cells.getOrDefault(needed, "").isEmpty()) {
        throw new RegisterException(AppText.EMPTY_CELL.with(needed));
      }
    }
    return cells;
  }
}
