package gradepost.app;

import gradepost.app.store.Disk;
import gradepost.source.RouteCsv.Table;
import gradepost.source.RouteList;
import gradepost.source.table.TableMistakes;
import gradepost.text.Mistake;
import gradepost.yaml.Problem;
import gradepost.yaml.SourcePosition;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Tables of lists, as files in a folder. */
final class TableFolder {
  private static final String END = ".csv";

  /** Every table of a folder, each called after its list. */
  static List<Table> tables(Path folder, List<Problem> problems) throws IOException {
    List<Table> tables = new ArrayList<>();
    List<Path> files = new ArrayList<>();
    Disk.requireFolder(folder);
    try (Stream<Path> all = Files.list(folder)) {
      all.filter(f -> String.valueOf(f.getFileName()).endsWith(END)).sorted().forEach(files::add);
    }
    for (Path file : files) {
      String name = String.valueOf(file.getFileName());
      Optional<RouteList> list =
          RouteList.of(name.substring(0, name.length() - END.length()).toLowerCase(Locale.ROOT));
      if (list.isPresent()) {
        tables.add(table(list.get(), file));
      } else {
        problems.add(error(file, TableMistakes.UNKNOWN_TABLE.with(name, names())));
      }
    }
    if (files.isEmpty()) {
      problems.add(error(folder, TableMistakes.NO_TABLES.with(names())));
    }
    return tables;
  }

  private static List<String> names() {
    return RouteList.words().stream().map(word -> word + END).toList();
  }

  private static Problem error(Path file, Mistake mistake) {
    return Problem.error(new SourcePosition(Disk.name(file), 1, 1), mistake);
  }

  /** One table. */
  static Table table(RouteList list, Path file) throws IOException {
    return new Table(list, Disk.name(file), Disk.typed(file));
  }

  private TableFolder() {}
}
