package gradepost.app.author;

import gradepost.app.author.Checked.Found;
import gradepost.app.store.Disk;
import gradepost.route.Route;
import gradepost.source.RouteCsv;
import gradepost.source.RouteList;
import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import gradepost.source.table.Csv;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Lists of a text as cells of a spreadsheet, out and in. */
final class Cells {
  /** What the cells are called in what is found in them. */
  private static final String NAME = "cells";

  private final DataFolder folder;
  private final Checks checks;

  Cells(DataFolder folder, Checks checks) {
    this.folder = folder;
    this.checks = checks;
  }

  /** The lists that a kind of file has. */
  static List<String> lists(String kind) {
    return Arrays.stream(RouteList.values())
        .filter(l -> kind.equals(l.ofNotices() ? "restrictions" : "route"))
        .map(RouteList::word)
        .toList();
  }

  /** The cells that a text has, a row a line, parted by tabs; or why there are none. */
  Taken out(LineFile file, String text, RouteList list) throws IOException {
    return taken(csv(file, text, list).export(list), table -> spread(Csv.rows(table)));
  }

  private static String spread(List<List<String>> rows) {
    return rows.stream()
        .map(
            row ->
                row.stream()
                    .map(c -> c.replaceAll("[\\t\\n\\r]+", " "))
                    .collect(Collectors.joining("\t")))
        .collect(Collectors.joining("\n", "", "\n"));
  }

  /** The text with the cells in it; or what is wrong with them. */
  Taken in(LineFile file, String text, RouteList list, String cells) throws IOException {
    RouteCsv.Table table = new RouteCsv.Table(list, NAME, cells.getBytes(StandardCharsets.UTF_8));
    return taken(csv(file, text, list).imported(List.of(table)), edited -> edited);
  }

  private interface Spelt {
    String of(String value);
  }

  private Taken taken(Reading<String> reading, Spelt spelt) {
    List<Found> found = reading.problems().all().stream().map(checks::found).toList();
    return new Taken(reading.found().map(spelt::of), found);
  }

  private RouteCsv csv(LineFile file, String text, RouteList list) throws IOException {
    String name = Disk.name(file.at());
    Edited files =
        new Edited(new DiskFiles(Path.of("")), name, text.getBytes(StandardCharsets.UTF_8));
    Optional<Route> route = Optional.empty();
    if (list.ofNotices()) {
      for (Path pack : folder.packsWith(file.at())) {
        route = route.or(() -> new Sources(files).routeOf(Disk.name(pack)).found());
      }
    }
    return new RouteCsv(files, name, route);
  }
}
