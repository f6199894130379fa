package gradepost.source.notice;

import gradepost.source.route.RouteKeys;
import gradepost.source.route.SpeedTables;
import gradepost.source.table.CsvText;
import gradepost.source.table.TableMistakes;
import gradepost.source.table.TableSize;
import gradepost.text.Mistake;
import gradepost.units.Nearest;
import gradepost.yaml.Key;
import gradepost.yaml.Reader;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.YamlText;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.DumperOptions.FlowStyle;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import org.yaml.snakeyaml.nodes.Tag;

/**
 * A table of notices as the same tree that a YAML file of them gives, each node at the place of its
 * cell, so that both are read and checked by the same key table.
 *
 * <p>Headings are the keys in any case and order, with any spacing; a unit may stand in the heading
 * in brackets. Lists are set off by semicolons. A place on one of two sections is {@code 3m 24ch
 * (Harbour)}, a board {@code warning 3m 24ch Down}, a differential speed {@code MU 30 mph}.
 */
public final class NoticeCsv {
  private static final Pattern UNIT = Pattern.compile("(.*?)[(\\[]([^)\\]]*)[)\\]]\\s*");
  private static final Pattern SECTIONED = Pattern.compile("(.+?)\\s*\\(([^)]+)\\)");
  private static final Pattern BOARD = Pattern.compile("(\\S+)\\s+(.+?)\\s+(\\S+)");
  private static final Pattern DIFFERENTIAL = Pattern.compile("(.+?)\\s+([0-9.]+\\s*\\S+)");
  private static final Map<String, String> ALSO =
      Map.of(
          "ref", "reference",
          "kind", "type",
          "line", "route",
          "runningline", "lines",
          "runninglines", "lines",
          "direction", "directions",
          "differentialspeeds", "differential",
          "differentialspeed", "differential",
          "issuedon", "issued",
          "easedfrom", "changed-from");

  /** A heading: its key, and the unit that its bare numbers have. */
  private record Heading(String key, String unit) {}

  /** The tree of the table; empty where it cannot be read, and then there is a problem. */
  public static Optional<Node> compose(String text, Reader in) {
    List<List<CsvText.Cell>> rows = CsvText.rows(text);
    if (rows.isEmpty()) {
      in.error(new SourcePosition(in.file(), 1, 1), NoticeMistakes.EMPTY_TABLE);
      return Optional.empty();
    }
    Optional<Mistake> size = TableSize.beyond(rows);
    if (size.isPresent()) {
      in.error(new SourcePosition(in.file(), 1, 1), size.get());
      return Optional.empty();
    }
    Optional<List<Heading>> headings = headings(rows.get(0), in);
    if (headings.isEmpty()) {
      return Optional.empty();
    }
    List<Node> notices = new ArrayList<>();
    for (List<CsvText.Cell> row : rows.subList(1, rows.size())) {
      if (row.size() > headings.get().size()) {
        CsvText.Cell extra = row.get(headings.get().size());
        in.error(
            new SourcePosition(in.file(), extra.line(), extra.column()),
            (row.stream().anyMatch(c -> c.text().contains(","))
                    ? NoticeMistakes.TOO_MANY_CELLS
                    : NoticeMistakes.TOO_MANY_CELLS_WITHOUT_COMMA)
                .with(row.size(), headings.get().size()));
        return Optional.empty();
      }
      notices.add(notice(row, headings.get()));
    }
    return Optional.of(list(notices, rows.get(0).get(0)));
  }

  private static Optional<List<Heading>> headings(List<CsvText.Cell> row, Reader in) {
    List<Heading> headings = new ArrayList<>();
    Map<String, String> keys = new LinkedHashMap<>();
    SpeedTables.NOTICE.keyNames().forEach(k -> keys.put(bare(k), k));
    int before = in.count();
    for (CsvText.Cell cell : row) {
      Matcher withUnit = UNIT.matcher(cell.text());
      String name = withUnit.matches() ? withUnit.group(1) : cell.text();
      String unit = withUnit.matches() ? withUnit.group(2).strip() : "";
      String key = keys.getOrDefault(ALSO.getOrDefault(bare(name), bare(name)), "");
      SourcePosition spot = new SourcePosition(in.file(), cell.line(), cell.column());
      if (key.isEmpty()) {
        in.error(
            spot,
            NoticeMistakes.UNKNOWN_COLUMN.with(
                name, keys.values(), Nearest.to(name.toLowerCase(Locale.ROOT), keys.values())));
      } else if (headings.stream().anyMatch(h -> h.key().equals(key))) {
        in.error(spot, TableMistakes.COLUMN_TWICE.with(key));
      }
      headings.add(new Heading(key, unit));
    }
    if (in.count() > before) {
      return Optional.empty();
    }
    complete(headings, row.get(0), in);
    return Optional.of(headings);
  }

  /** Every row would lack what has no column: that is told once. */
  private static void complete(List<Heading> headings, CsvText.Cell first, Reader in) {
    List<String> missing =
        SpeedTables.NOTICE.keys().stream()
            .filter(k -> k.required() && headings.stream().noneMatch(h -> h.key().equals(k.name())))
            .map(Key::name)
            .toList();
    if (!missing.isEmpty()) {
      in.error(
          new SourcePosition(in.file(), first.line(), 1),
          TableMistakes.MISSING_COLUMNS.with(missing, SpeedTables.NOTICE.keyNames()));
    }
  }

  private static String bare(String heading) {
    return heading.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "");
  }

  private static Node notice(List<CsvText.Cell> row, List<Heading> headings) {
    List<NodeTuple> tuples = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      CsvText.Cell cell = row.get(i);
      if (!cell.text().isBlank()) {
        tuples.add(new NodeTuple(word(headings.get(i).key(), cell), value(headings.get(i), cell)));
      }
    }
    return group(tuples, row.get(0));
  }

  private static Node value(Heading heading, CsvText.Cell cell) {
    String text = cell.text().strip();
    if (!heading.unit().isEmpty() && text.matches("[0-9]+([.,][0-9]+)?")) {
      text = text + " " + heading.unit();
    }
    String key = heading.key();
    Optional<Node> flow =
        text.startsWith("[") || text.startsWith("{")
            ? YamlText.compose("", text.getBytes(StandardCharsets.UTF_8), p -> {})
            : Optional.empty();
    if (flow.isPresent()) {
      return at(flow.get(), cell);
    } else if (key.equals(RouteKeys.FROM.name()) || key.equals(RouteKeys.TO.name())) {
      return place(text, cell);
    } else if (key.equals(RouteKeys.LINES.name())) {
      return each(text, cell, item -> word(item, cell));
    } else if (key.equals(SpeedTables.DIFFERENTIALS.name())) {
      return each(text, cell, item -> differential(item, cell));
    } else if (key.equals(SpeedTables.BOARDS.name())
        && !text.equalsIgnoreCase(SpeedTables.NO_BOARDS)) {
      return each(text, cell, item -> board(item, cell));
    }
    return word(text, cell);
  }

  /** What export writes, with each node at the place of its cell. */
  private static Node at(Node node, CsvText.Cell cell) {
    if (node instanceof SequenceNode list) {
      return list(list.getValue().stream().map(n -> at(n, cell)).toList(), cell);
    } else if (node instanceof MappingNode group) {
      return group(
          group.getValue().stream()
              .map(t -> new NodeTuple(at(t.getKeyNode(), cell), at(t.getValueNode(), cell)))
              .toList(),
          cell);
    }
    return word(((ScalarNode) node).getValue(), cell);
  }

  private static Node place(String text, CsvText.Cell cell) {
    Matcher sectioned = SECTIONED.matcher(text);
    return sectioned.matches()
        ? group(
            List.of(
                new NodeTuple(word("section", cell), word(sectioned.group(2).strip(), cell)),
                new NodeTuple(word("at", cell), word(sectioned.group(1), cell))),
            cell)
        : word(text, cell);
  }

  private static Node differential(String text, CsvText.Cell cell) {
    Matcher matcher = DIFFERENTIAL.matcher(text);
    return matcher.matches()
        ? group(
            List.of(
                new NodeTuple(word("class", cell), word(matcher.group(1), cell)),
                new NodeTuple(word("speed", cell), word(matcher.group(2), cell))),
            cell)
        : word(text, cell);
  }

  private static Node board(String text, CsvText.Cell cell) {
    Matcher matcher = BOARD.matcher(text);
    return matcher.matches()
        ? group(
            List.of(
                new NodeTuple(
                    word("kind", cell), word(matcher.group(1).toLowerCase(Locale.ROOT), cell)),
                new NodeTuple(word("at", cell), place(matcher.group(2), cell)),
                new NodeTuple(word("direction", cell), word(matcher.group(3), cell))),
            cell)
        : word(text, cell);
  }

  private static Node each(
      String text, CsvText.Cell cell, java.util.function.Function<String, Node> make) {
    List<Node> items = new ArrayList<>();
    for (String item : text.split(";", -1)) {
      if (!item.isBlank()) {
        items.add(make.apply(item.strip()));
      }
    }
    return list(items, cell);
  }

  private static Node word(String text, CsvText.Cell cell) {
    return new ScalarNode(Tag.STR, text, cell.mark(), cell.mark(), ScalarStyle.PLAIN);
  }

  private static Node group(List<NodeTuple> tuples, CsvText.Cell cell) {
    return new MappingNode(Tag.MAP, true, tuples, cell.mark(), cell.mark(), FlowStyle.BLOCK);
  }

  private static Node list(List<Node> items, CsvText.Cell cell) {
    return new SequenceNode(Tag.SEQ, true, items, cell.mark(), cell.mark(), FlowStyle.BLOCK);
  }

  private NoticeCsv() {}
}
