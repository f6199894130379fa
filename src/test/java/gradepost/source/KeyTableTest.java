package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Property: every row of every key table is read, checked and described. */
class KeyTableTest {
  private static final Map<String, Shape<?>> TABLES = new LinkedHashMap<>();

  static {
    TABLES.put(Fixture.ROUTE, RouteTable.ROUTE);
    TABLES.put(Fixture.STOCK, StockTable.STOCK);
    TABLES.put(Fixture.POLICY, PolicyTable.POLICY);
    TABLES.put(Fixture.NOTICES, NoticesTable.NOTICES_FILE);
    TABLES.put(Fixture.PACK, PackTable.PACK);
  }

  /** A key met in a fixture: its value, and the group that holds it. */
  private record Met(String file, String text, Key<?> key, Node value, MappingNode group) {
    String replaced(String by) {
      int start = value.getStartMark().getIndex();
      String typed = text.substring(start, value.getEndMark().getIndex()).stripTrailing();
      return text.substring(0, start) + by + text.substring(start + typed.length());
    }

    String at(Node node) {
      return "%s:%d:%d: error: "
          .formatted(file, node.getStartMark().getLine() + 1, node.getStartMark().getColumn() + 1);
    }
  }

  private static Set<Met> met() {
    Set<Met> met = new LinkedHashSet<>();
    TABLES.forEach(
        (file, table) -> {
          walk(file, table, Fixture.good().text(file), met);
        });
    Fixture.otherStocks().forEach(text -> walk(Fixture.STOCK, StockTable.STOCK, text, met));
    return met;
  }

  private static void walk(String file, Shape<?> table, String text, Set<Met> met) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    Node root = YamlText.compose(file, bytes, p -> {}).orElseThrow();
    walk(new From(file, text), table, root, met);
  }

  /** What is walked over. */
  private record From(String file, String text) {}

  private static void walk(From file, Kind<?> kind, Node node, Set<Met> met) {
    if (kind instanceof Shape<?> shape && node instanceof MappingNode group) {
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
      Kind<?> shape = variants.shapes().get(((ScalarNode) word).getValue());
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

  private static String problems(Met met, String text) {
    return Fixture.good().put(met.file(), text).sources().pack(Fixture.PACK).problems().text();
  }

  @Test
  void aGroupThatBelongsNowhereIsReportedAtItsPlace() {
    for (Met met : met()) {
      if (met.key().kind() instanceof WordMap) {
        continue; // a group with names of its own: PackNameProblemsTest
      }
      String text = met.replaced("{zzz: 1}");
      assertThat(problems(met, text)).as(met.key().name()).contains(met.at(met.value()));
    }
  }

  @Test
  void aBareNumberForAQuantityIsReportedAtItsPlace() {
    int quantities = 0;
    for (Met met : met()) {
      String text = met.replaced("17");
      String problems = problems(met, text);
      if (met.key().kind() instanceof Scalar.Quantity<?> || met.key().kind() instanceof PlaceKind) {
        quantities++;
        assertThat(problems)
            .as(met.key().name())
            .contains(met.at(met.value()) + met.key().name() + " \"17\" has no unit; allowed: ")
            .contains("\n  Maybe ");
      }
    }
    assertThat(quantities).isGreaterThan(150);
  }

  @Test
  void aMissingKeyIsReportedAtItsGroup() {
    int required = 0;
    for (Met met : met()) {
      String text = met.text();
      int name = text.lastIndexOf(met.key().name() + ":", met.value().getStartMark().getIndex());
      String renamed = text.substring(0, name) + "x-" + text.substring(name);
      String problems = problems(met, renamed);
      if (!isDiscriminator(met)) {
        assertThat(problems).as(met.key().name()).contains("has no key \"x-" + met.key().name());
      }
      if (met.key().required()) {
        required++;
        assertThat(problems)
            .as(met.key().name())
            .contains(met.at(met.group()))
            .contains(" lacks the key \"" + met.key().name() + "\"");
      }
    }
    assertThat(required).isGreaterThan(250);
  }

  /** Without it the table itself is not known, so that the answer is another. */
  private static boolean isDiscriminator(Met met) {
    return Set.of("law", "action").contains(met.key().name());
  }

  @Test
  void theFixtureHasEveryKeyButThoseOfOtherLaws() {
    Set<String> seen = new TreeSet<>();
    met().forEach(m -> seen.add(m.key().name()));
    Set<String> unseen = new TreeSet<>();
    for (Key<?> key : keys()) {
      if (!seen.contains(key.name())) {
        unseen.add(key.name());
      }
    }
    assertThat(unseen)
        .containsExactly(
            "dwell",
            "frontal-area",
            "k",
            "lead-area",
            "n-per-tonne",
            "none",
            "pounds-per-ton-per-degree",
            "trail-area",
            "volume-ratio");
  }

  @Test
  void everyKeyIsDescribedAndNamedInOneManner() {
    for (Key<?> key : keys()) {
      assertThat(key.name()).matches("[a-z]+(-[a-z0-9]+)*");
      assertThat(key.description()).as(key.name()).matches("(?s)[A-Z].*\\.");
      assertThat(key.kind().allowed()).as(key.name()).isNotBlank();
    }
  }

  private static Set<Key<?>> keys() {
    Set<Key<?>> keys = new LinkedHashSet<>();
    TABLES.values().forEach(table -> collect(table, keys));
    return keys;
  }

  private static void collect(Kind<?> kind, Set<Key<?>> keys) {
    if (kind instanceof Shape<?> shape) {
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
}
