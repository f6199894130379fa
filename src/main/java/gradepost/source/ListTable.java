package gradepost.source;

import gradepost.source.notice.NoticeCsv;
import gradepost.source.notice.NoticesTable;
import gradepost.source.route.RouteKeys;
import gradepost.source.route.RouteTable;
import gradepost.source.route.StationTables;
import gradepost.source.table.Csv;
import gradepost.source.table.GroupEdit;
import gradepost.source.table.InlineYaml;
import gradepost.source.table.ListEdit;
import gradepost.source.table.TableMistakes;
import gradepost.source.table.TableRefused;
import gradepost.source.table.TableSize;
import gradepost.text.Mistake;
import gradepost.units.Nearest;
import gradepost.yaml.Problem;
import gradepost.yaml.Reader;
import gradepost.yaml.YamlText;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** One list of a file as rows of cells: out of its text, out of a table, and into its text. */
final class ListTable {
  private final RouteList list;

  ListTable(RouteList list) {
    this.list = list;
  }

  /** One list, and what its group is called; empty where it is the file's own. */
  private record Listed(List<String> head, SequenceNode list) {}

  /** The table of a file: headings, then rows; a list of words as {@code one; other}. */
  String text(MappingNode root) {
    List<List<String>> rows = new ArrayList<>(List.of(list.columns()));
    rows(root).forEach(row -> rows.add(row.stream().map(ListTable::spelt).toList()));
    return Csv.text(rows);
  }

  private static String spelt(String cell) {
    if (!cell.startsWith("[")) {
      return cell;
    }
    boolean words =
        parsed("", cell) instanceof SequenceNode all
            && !all.getValue().isEmpty()
            && all.getValue().stream()
                .allMatch(n -> n instanceof ScalarNode s && !s.getValue().contains(";"));
    return words
        ? ((SequenceNode) parsed("", cell))
            .getValue().stream()
                .map(n -> ((ScalarNode) n).getValue())
                .collect(Collectors.joining("; "))
        : cell;
  }

  /** The rows that a file has. */
  List<List<String>> rows(MappingNode root) {
    List<List<String>> rows = new ArrayList<>();
    for (Listed each : lists(root)) {
      for (Node entry : each.list().getValue()) {
        if (!(entry instanceof MappingNode group)) {
          continue;
        }
        List<String> row = new ArrayList<>(each.head());
        row.addAll(ListEdit.cells(group, list.entry().keyNames()));
        rows.add(row);
      }
    }
    return rows;
  }

  /** The entries that a file has, in the order of the rows. */
  List<Node> entries(MappingNode root) {
    List<Node> entries = new ArrayList<>();
    lists(root).forEach(l -> entries.addAll(l.list().getValue()));
    return entries;
  }

  /**
   * Rows with a cell for every column, in the order of the key table. A column that the file does
   * not use either may be missing.
   *
   * @param in told what is wrong with a table of notices
   */
  List<List<String>> typed(String table, MappingNode root, Reader in) {
    if (list.ofNotices()) {
      return NoticeCsv.compose(table, in)
          .map(n -> ((SequenceNode) n).getValue())
          .orElse(List.of())
          .stream()
          .map(n -> ListEdit.cells((MappingNode) n, list.entry().keyNames()))
          .toList();
    }
    List<List<String>> typed = Csv.rows(table);
    if (typed.isEmpty()) {
      throw new TableRefused(TableMistakes.NO_COLUMN_NAMES);
    }
    Optional<Mistake> size = TableSize.beyond(typed);
    if (size.isPresent()) {
      throw new TableRefused(size.get());
    }
    List<String> columns = list.columns();
    List<String> head = typed.get(0).stream().map(c -> c.toLowerCase(Locale.ROOT)).toList();
    complete(head, rows(root));
    List<List<String>> rows = new ArrayList<>();
    for (List<String> row : typed.subList(1, typed.size())) {
      if (row.size() > head.size()) {
        throw new TableRefused(
            TableMistakes.TOO_MANY_CELLS.with(rows.size() + 2, row.size(), head.size()));
      }
      List<String> cells = new ArrayList<>();
      for (String column : columns) {
        int at = head.indexOf(column);
        cells.add(normal(column, at >= 0 && at < row.size() ? row.get(at) : ""));
      }
      rows.add(cells);
    }
    return list.heads().isEmpty() ? rows : grouped(rows);
  }

  private void complete(List<String> head, List<List<String>> present) {
    List<String> columns = list.columns();
    for (String column : head) {
      if (!columns.contains(column)) {
        throw new TableRefused(
            TableMistakes.UNKNOWN_COLUMN.with(column, columns, Nearest.to(column, columns)));
      } else if (head.indexOf(column) < head.lastIndexOf(column)) {
        throw new TableRefused(TableMistakes.COLUMN_TWICE.with(column));
      }
    }
    List<String> missing = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      int at = i;
      boolean used = present.stream().anyMatch(row -> !row.get(at).isEmpty());
      if (!head.contains(columns.get(i)) && (used || list.requires(columns.get(i)))) {
        missing.add(columns.get(i));
      }
    }
    if (!missing.isEmpty()) {
      throw new TableRefused(TableMistakes.MISSING_COLUMNS.with(missing, columns));
    }
  }

  /** Where a row says nothing of its group, it belongs to that of the row above. */
  private List<List<String>> grouped(List<List<String>> rows) {
    int heads = list.heads().size();
    Map<String, List<List<String>>> groups = new LinkedHashMap<>();
    Map<String, List<String>> first = new LinkedHashMap<>();
    String name = "";
    for (List<String> row : rows) {
      name = row.get(0).isEmpty() ? name : row.get(0);
      if (name.isEmpty()) {
        throw new TableRefused(TableMistakes.NO_GROUP.with(list.heads().get(0)));
      }
      List<String> head = new ArrayList<>(row.subList(0, heads));
      head.set(0, name);
      List<String> known = first.computeIfAbsent(name, n -> head);
      for (int i = 1; i < heads; i++) {
        head.set(i, row.get(i).isEmpty() ? known.get(i) : row.get(i));
      }
      List<String> whole = new ArrayList<>(head);
      whole.addAll(row.subList(heads, row.size()));
      groups.computeIfAbsent(name, n -> new ArrayList<>()).add(whole);
    }
    return groups.values().stream().flatMap(List::stream).toList();
  }

  /** A cell as the file has it: groups and lists in one manner of writing. */
  private String normal(String column, String cell) {
    if (group(column, cell)) {
      return InlineYaml.text(parsed(column, cell));
    } else if (column.equals(RouteKeys.LINES.name()) && !cell.isEmpty()) {
      return Arrays.stream(cell.split(";"))
          .map(String::strip)
          .filter(word -> !word.isEmpty())
          .map(InlineYaml::scalar)
          .collect(Collectors.joining(", ", "[", "]"));
    }
    return cell;
  }

  private boolean group(String column, String cell) {
    return !list.isText(column) && (cell.startsWith("{") || cell.startsWith("["));
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

  /** The text of a file with these rows in the place of its own. */
  String edited(String text, MappingNode root, List<List<String>> rows) {
    List<String> keys = list.entry().keyNames();
    List<Listed> lists = lists(root);
    if (list == RouteList.STATIONS) {
      GroupEdit edit =
          new GroupEdit(
              RouteTable.STATIONS.name(),
              List.of(StationTables.STATION_NAME.name(), StationTables.CODE.name()),
              list.key(),
              keys);
      return edit.bring(text, groups(rows));
    }
    ListEdit edit = new ListEdit(text, keys);
    if (list == RouteList.PLATFORMS) {
      Map<List<String>, List<List<String>>> own = new LinkedHashMap<>();
      lists.forEach(l -> own.put(l.head(), new ArrayList<>()));
      for (List<String> row : rows) {
        Optional<List<List<String>>> known = Optional.ofNullable(own.get(row.subList(0, 1)));
        known
            .orElseThrow(
                () ->
                    new TableRefused(
                        TableMistakes.UNKNOWN_STATION.with(
                            row.get(0), own.keySet().stream().map(h -> h.get(0)).toList())))
            .add(row.subList(1, row.size()));
      }
      for (Listed each : lists) {
        List<List<String>> cells = Optional.ofNullable(own.get(each.head())).orElseThrow();
        edit.bring(each.list(), cells, written(cells));
      }
    } else if (!lists.isEmpty()) {
      if (list.ofNotices() && !rows.isEmpty()) {
        edit.drop(root, NoticesTable.NONE.name());
      }
      edit.bring(lists.get(0).list(), rows, written(rows));
    } else if (!rows.isEmpty()) {
      edit.append(list.key(), written(rows));
    }
    return edit.done();
  }

  private List<GroupEdit.Group> groups(List<List<String>> rows) {
    int heads = list.heads().size();
    Map<List<String>, List<List<String>>> all = new LinkedHashMap<>();
    for (List<String> row : rows) {
      all.computeIfAbsent(row.subList(0, heads), h -> new ArrayList<>())
          .add(row.subList(heads, row.size()));
    }
    List<GroupEdit.Group> groups = new ArrayList<>();
    all.forEach((head, own) -> groups.add(new GroupEdit.Group(head, own, written(own))));
    return groups;
  }

  private List<List<String>> written(List<List<String>> rows) {
    List<String> keys = list.entry().keyNames();
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

  private List<Listed> lists(MappingNode root) {
    List<Listed> lists = new ArrayList<>();
    if (list.heads().isEmpty()) {
      listed(root, list.key()).ifPresent(l -> lists.add(new Listed(List.of(), l)));
      return lists;
    }
    List<Node> groups =
        listed(root, RouteTable.STATIONS.name()).map(SequenceNode::getValue).orElse(List.of());
    List<String> keys =
        List.of(StationTables.STATION_NAME.name(), StationTables.CODE.name())
            .subList(0, list.heads().size());
    for (Node each : groups) {
      if (each instanceof MappingNode group) {
        List<String> head =
            keys.stream()
                .map(k -> Reader.valueOf(group, k).map(ListTable::word).orElse(""))
                .toList();
        listed(group, list.key()).ifPresent(l -> lists.add(new Listed(head, l)));
      }
    }
    return lists;
  }

  private static String word(Node node) {
    return node instanceof ScalarNode scalar ? scalar.getValue().strip() : "";
  }

  private static Optional<SequenceNode> listed(MappingNode group, String key) {
    return Reader.valueOf(group, key)
        .filter(SequenceNode.class::isInstance)
        .map(SequenceNode.class::cast)
        .filter(l -> l.getValue().stream().allMatch(MappingNode.class::isInstance));
  }
}
