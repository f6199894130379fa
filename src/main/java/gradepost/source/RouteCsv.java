package gradepost.source;

import gradepost.route.Route;
import gradepost.source.file.SourceFiles;
import gradepost.source.file.SourceFiles.Bytes;
import gradepost.source.route.LinesideTables;
import gradepost.source.route.RouteTable;
import gradepost.source.route.SpeedTables;
import gradepost.source.route.StationTables;
import gradepost.source.route.TrackTables;
import gradepost.source.table.Csv;
import gradepost.source.table.InlineYaml;
import gradepost.source.table.ListEdit;
import gradepost.source.table.TableMistakes;
import gradepost.source.table.TableRefused;
import gradepost.units.Nearest;
import gradepost.yaml.Key;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Reading;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.YamlText;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Lists of a route as tables, out and in. A column is a key; what has keys of its own is flow. */
public final class RouteCsv {
  private static final String STATION = "station";

  /** The lists that go in and out. */
  public enum Part {
    GRADIENTS,
    CURVES,
    RESTRICTIONS,
    SIGNALS,
    PLATFORMS,
    LANDMARKS;

    private Key<?> key() {
      return switch (this) {
        case GRADIENTS -> RouteTable.GRADIENTS;
        case CURVES -> RouteTable.CURVES;
        case RESTRICTIONS -> RouteTable.RESTRICTIONS;
        case SIGNALS -> RouteTable.SIGNALS;
        case PLATFORMS -> StationTables.PLATFORMS;
        case LANDMARKS -> RouteTable.LANDMARKS;
      };
    }

    private ObjectSchema<?> entry() {
      return switch (this) {
        case GRADIENTS -> TrackTables.GRADIENT;
        case CURVES -> TrackTables.CURVE;
        case RESTRICTIONS -> SpeedTables.PERMANENT;
        case SIGNALS -> LinesideTables.SIGNAL;
        case PLATFORMS -> StationTables.PLATFORM;
        case LANDMARKS -> LinesideTables.LANDMARK;
      };
    }

    /** What the command line calls it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    private List<String> columns() {
      List<String> columns = new ArrayList<>();
      if (this == PLATFORMS) {
        columns.add(STATION);
      }
      columns.addAll(entry().keyNames());
      return columns;
    }
  }

  /** One list, and the station that it belongs to; no station where it is the route's own. */
  private record Listed(String station, SequenceNode list) {}

  private final SourceFiles files;
  private final String name;
  private final Part part;

  public RouteCsv(SourceFiles files, String name, Part part) {
    this.files = files;
    this.name = name;
    this.part = part;
  }

  /** The table; refused where the route has errors. */
  public Reading<String> export() {
    Reading<Route> route = new Sources(files).route(name);
    if (route.found().isEmpty()) {
      return new Reading.Rejected<>(route.problems());
    }
    List<List<String>> rows = new ArrayList<>(List.of(part.columns()));
    rows.addAll(rows(root(text())));
    return new Reading.Good<>(Csv.text(rows), Problems.NONE);
  }

  /**
   * The text of the route file with the table in it; refused where the route would have errors.
   *
   * @param csvName what the table is called in problems
   */
  public Reading<String> imported(String csvName, byte[] csv) {
    Reading<Route> before = new Sources(files).route(name);
    if (before.found().isEmpty()) {
      return new Reading.Rejected<>(before.problems());
    }
    try {
      List<List<String>> rows = inColumns(Csv.rows(plain(csv)));
      String edited = edited(rows);
      SourceFiles after =
          other ->
              other.equals(name)
                  ? new Bytes(edited.getBytes(StandardCharsets.UTF_8))
                  : files.read(other);
      Reading<Route> reading = new Sources(after).route(name);
      if (reading.found().isEmpty()) {
        return new Reading.Rejected<>(byRow(reading.problems(), root(edited), csvName));
      }
      if (!rows(root(edited)).equals(rows)) {
        throw new TableRefused(TableMistakes.LOSSY);
      }
      return new Reading.Good<>(mark() + edited, Problems.NONE);
    } catch (TableRefused e) {
      SourcePosition top = new SourcePosition(csvName, 1, 1);
      Problem problem = new Problem(top, Severity.ERROR, e.mistake());
      return new Reading.Rejected<>(new Problems(List.of(problem)));
    }
  }

  private static String plain(byte[] csv) {
    String text = new String(csv, StandardCharsets.UTF_8);
    if (text.indexOf('\uFFFD') >= 0) {
      throw new TableRefused(TableMistakes.NOT_UTF_8);
    }
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  /** Rows with a cell for every column, in the order of the key table. */
  private List<List<String>> inColumns(List<List<String>> typed) {
    if (typed.isEmpty()) {
      throw new TableRefused(TableMistakes.NO_COLUMN_NAMES);
    }
    List<String> columns = part.columns();
    List<String> head = typed.get(0);
    for (String column : head) {
      if (!columns.contains(column)) {
        throw new TableRefused(
            TableMistakes.UNKNOWN_COLUMN.with(column, columns, Nearest.to(column, columns)));
      }
    }
    if (head.stream().distinct().count() < head.size() || head.size() < columns.size()) {
      throw new TableRefused(TableMistakes.OTHER_COLUMNS.with(head, columns));
    }
    List<List<String>> rows = new ArrayList<>();
    for (List<String> row : typed.subList(1, typed.size())) {
      if (row.size() > head.size()) {
        throw new TableRefused(
            TableMistakes.TOO_MANY_CELLS.with(rows.size() + 2, row.size(), head.size()));
      }
      List<String> cells = new ArrayList<>();
      for (String column : columns) {
        int at = head.indexOf(column);
        cells.add(normal(column, at < row.size() ? row.get(at) : ""));
      }
      rows.add(cells);
    }
    return rows;
  }

  /** A cell as export would have it: groups and lists in one manner of writing. */
  private String normal(String column, String cell) {
    return group(column, cell) ? InlineYaml.text(parsed(column, cell)) : cell;
  }

  private boolean group(String column, String cell) {
    Optional<Key<?>> key =
        part.entry().keys().stream().filter(k -> k.name().equals(column)).findFirst();
    boolean text = key.isEmpty() || key.get().kind().isOneText();
    return !text && (cell.startsWith("{") || cell.startsWith("["));
  }

  private static Node parsed(String column, String cell) {
    List<Problem> problems = new ArrayList<>();
    Optional<Node> node =
        YamlText.compose(column, cell.getBytes(StandardCharsets.UTF_8), problems::add);
    return node.orElseThrow(
        () ->
            new TableRefused(
                TableMistakes.CELL_WRONG.with(cell, column, problems.get(0).mistake())));
  }

  private String edited(List<List<String>> rows) {
    String text = text();
    MappingNode root = root(text);
    ListEdit edit = new ListEdit(text, part.entry().keyNames());
    int skip = part == Part.PLATFORMS ? 1 : 0;
    Map<String, List<List<String>>> byStation = new LinkedHashMap<>();
    List<Listed> lists = lists(root);
    lists.forEach(l -> byStation.put(l.station(), new ArrayList<>()));
    for (List<String> row : rows) {
      String station = skip == 1 ? row.get(0) : "";
      if (skip == 1 && !byStation.containsKey(station)) {
        throw new TableRefused(TableMistakes.UNKNOWN_STATION.with(station, byStation.keySet()));
      }
      byStation.computeIfAbsent(station, s -> new ArrayList<>()).add(row.subList(skip, row.size()));
    }
    if (lists.isEmpty()) {
      edit.append(part.key().name(), written(byStation.getOrDefault("", List.of())));
    }
    for (Listed each : lists) {
      List<List<String>> own = byStation.getOrDefault(each.station(), List.of());
      edit.bring(each.list(), own, written(own));
    }
    return edit.done();
  }

  private List<List<String>> written(List<List<String>> rows) {
    List<String> keys = part.entry().keyNames();
    List<List<String>> written = new ArrayList<>();
    for (List<String> row : rows) {
      List<String> cells = new ArrayList<>();
      for (int i = 0; i < keys.size(); i++) {
        String cell = row.get(i);
        cells.add(cell.isEmpty() || group(keys.get(i), cell) ? cell : InlineYaml.scalar(cell));
      }
      written.add(cells);
    }
    return written;
  }

  private List<List<String>> rows(MappingNode root) {
    List<List<String>> rows = new ArrayList<>();
    for (Listed each : lists(root)) {
      for (Node entry : each.list().getValue()) {
        List<String> row = new ArrayList<>();
        if (part == Part.PLATFORMS) {
          row.add(each.station());
        }
        row.addAll(ListEdit.cells((MappingNode) entry, part.entry().keyNames()));
        rows.add(row);
      }
    }
    return rows;
  }

  private List<Listed> lists(MappingNode root) {
    List<Listed> lists = new ArrayList<>();
    if (part == Part.PLATFORMS) {
      for (Node station : list(root, RouteTable.STATIONS.name()).orElseThrow().getValue()) {
        MappingNode group = (MappingNode) station;
        String stationName =
            Reader.valueOf(group, StationTables.STATION_NAME.name())
                .map(n -> ((ScalarNode) n).getValue().strip())
                .orElse("");
        list(group, part.key().name()).ifPresent(l -> lists.add(new Listed(stationName, l)));
      }
    } else {
      list(root, part.key().name()).ifPresent(l -> lists.add(new Listed("", l)));
    }
    return lists;
  }

  private static Optional<SequenceNode> list(MappingNode group, String key) {
    return Reader.valueOf(group, key)
        .filter(SequenceNode.class::isInstance)
        .map(SequenceNode.class::cast);
  }

  /** A problem inside an entry is told by the row that made it. */
  private Problems byRow(Problems problems, MappingNode root, String csvName) {
    List<Node> entries = new ArrayList<>();
    lists(root).forEach(l -> entries.addAll(l.list().getValue()));
    List<Problem> told = new ArrayList<>();
    for (Problem problem : problems.all()) {
      int row = 0;
      for (int i = 0; i < entries.size(); i++) {
        int first = entries.get(i).getStartMark().getLine() + 1;
        int last = entries.get(i).getEndMark().getLine() + 1;
        if (problem.spot().line() >= first && problem.spot().line() <= last && row == 0) {
          row = i + 2;
        }
      }
      told.add(row == 0 ? problem : problem.at(new SourcePosition(csvName, row, 1)));
    }
    return new Problems(told);
  }

  /** The byte-order mark of the file, if it has one. */
  private String mark() {
    byte[] bytes = files.read(name).held().orElseThrow().bytes();
    return new String(bytes, StandardCharsets.UTF_8).startsWith("\ufeff") ? "\ufeff" : "";
  }

  /** As it is in the file; with its byte-order mark, if any, taken off. */
  private String text() {
    byte[] bytes = files.read(name).held().orElseThrow().bytes();
    String text = new String(bytes, StandardCharsets.UTF_8);
    return text.startsWith("\ufeff") ? text.substring(1) : text;
  }

  private MappingNode root(String text) {
    return (MappingNode)
        YamlText.compose(name, text.getBytes(StandardCharsets.UTF_8), p -> {})
            .filter(MappingNode.class::isInstance)
            .orElseThrow(() -> new TableRefused(TableMistakes.NOT_WRITABLE));
  }

  /** The words of the parts, for a command line. */
  public static List<String> words() {
    return Arrays.stream(Part.values()).map(Part::word).toList();
  }
}
