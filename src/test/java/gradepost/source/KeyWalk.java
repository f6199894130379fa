package gradepost.source;

import gradepost.Examples;
import gradepost.source.notice.NoticesTable;
import gradepost.source.pack.PackTable;
import gradepost.source.policy.PolicyTable;
import gradepost.source.route.PlaceKind;
import gradepost.source.route.RouteTable;
import gradepost.source.stock.StockTable;
import gradepost.yaml.Forms;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ListOr;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Reader;
import gradepost.yaml.ValueType;
import gradepost.yaml.Variants;
import gradepost.yaml.WordOr;
import gradepost.yaml.YamlText;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Every key of the key tables, where the fixture's files have it. */
final class KeyWalk {
  static final Map<String, ObjectSchema<?>> TABLES = new LinkedHashMap<>();

  static {
    TABLES.put(Fixture.ROUTE, RouteTable.ROUTE);
    TABLES.put(Fixture.STOCK, StockTable.STOCK);
    TABLES.put(Fixture.POLICY, PolicyTable.POLICY);
    TABLES.put(Fixture.NOTICES, NoticesTable.NOTICES_FILE);
    TABLES.put(Fixture.PACK, PackTable.PACK);
  }

  /** A key met in a file: its value, and the group that holds it. */
  record Met(String file, String text, Key<?> key, Node value, MappingNode group) {
    ValueType<?> kind() {
      return key.kind();
    }

    String replaced(String by) {
      int start = value.getStartMark().getIndex();
      return text.substring(0, start) + by + text.substring(start + typed().length());
    }

    /** The value as it stands in the file. */
    String typed() {
      return text.substring(value.getStartMark().getIndex(), value.getEndMark().getIndex())
          .stripTrailing();
    }

    String at(Node node) {
      return "%s:%d:%d: error: "
          .formatted(file, node.getStartMark().getLine() + 1, node.getStartMark().getColumn() + 1);
    }
  }

  /** All of the fixture's files, and of its other stock and pack files. */
  static Set<Met> met() {
    Set<Met> met = new LinkedHashSet<>();
    TABLES.forEach((file, table) -> met.addAll(met(file, Fixture.good().text(file))));
    Fixture.otherStocks().forEach(text -> met.addAll(met(Fixture.STOCK, text)));
    met.addAll(met(Fixture.PACK, Fixture.packWithEditions()));
    return met;
  }

  /** In an ordinary run every third of them. */
  static List<Met> some() {
    List<Met> all = List.copyOf(met());
    int step = Examples.of(3, 1);
    return IntStream.range(0, all.size()).filter(i -> i % step == 0).mapToObj(all::get).toList();
  }

  /** All of one file. */
  static Set<Met> met(String file, String text) {
    Set<Met> met = new LinkedHashSet<>();
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    Node root = YamlText.compose(file, bytes, p -> {}).orElseThrow();
    walk(new From(file, text), TABLES.get(file), root, met);
    return met;
  }

  /** What is walked over. */
  private record From(String file, String text) {}

  private static void walk(From file, ValueType<?> kind, Node node, Set<Met> met) {
    if (kind instanceof ObjectSchema<?> shape && node instanceof MappingNode group) {
      for (Key<?> key : shape.keys()) {
        Reader.valueOf(group, key.name())
            .ifPresent(
                value -> {
                  met.add(new Met(file.file(), file.text(), key, value, group));
                  walk(file, key.kind(), value, met);
                });
      }
    } else if (kind instanceof ListOf<?> list && node instanceof SequenceNode sequence) {
      sequence.getValue().forEach(each -> walk(file, list.element(), each, met));
    } else if (kind instanceof Variants<?> variants && node instanceof MappingNode group) {
      Node word = Reader.valueOf(group, variants.key()).orElseThrow();
      ValueType<?> shape = variants.shapes().get(((ScalarNode) word).getValue());
      walk(file, shape, node, met);
    } else if (kind instanceof WordOr<?> either) {
      walk(file, either.other(), node, met);
    } else if (kind instanceof Forms<?> forms && node instanceof MappingNode group) {
      forms.forms().entrySet().stream()
          .filter(form -> Reader.valueOf(group, form.getKey()).isPresent())
          .findFirst()
          .ifPresent(form -> walk(file, form.getValue(), node, met));
    } else if (kind instanceof ListOr<?> list) {
      walk(file, node instanceof MappingNode ? list.shape() : list.list(), node, met);
    } else if (kind instanceof PlaceKind) {
      walk(file, PlaceKind.SECTIONED, node, met);
    }
  }

  /** Every key of the tables themselves. */
  static Set<Key<?>> keys() {
    Set<Key<?>> keys = new LinkedHashSet<>();
    TABLES.values().forEach(table -> collect(table, keys));
    return keys;
  }

  private static void collect(ValueType<?> kind, Set<Key<?>> keys) {
    if (kind instanceof ObjectSchema<?> shape) {
      for (Key<?> key : shape.keys()) {
        keys.add(key);
        collect(key.kind(), keys);
      }
    } else if (kind instanceof ListOf<?> list) {
      collect(list.element(), keys);
    } else if (kind instanceof Variants<?> variants) {
      List.copyOf(variants.shapes().values()).forEach(shape -> collect(shape, keys));
    } else if (kind instanceof WordOr<?> either) {
      collect(either.other(), keys);
    } else if (kind instanceof Forms<?> forms) {
      List.copyOf(forms.forms().values()).forEach(form -> collect(form, keys));
    } else if (kind instanceof ListOr<?> list) {
      collect(list.list(), keys);
      collect(list.shape(), keys);
    } else if (kind instanceof PlaceKind) {
      collect(PlaceKind.SECTIONED, keys);
    }
  }

  private KeyWalk() {}
}
