package gradepost.yaml;

import gradepost.text.Mistake;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * A list of values of one kind.
 *
 * @param least how many there are at least
 * @param most how many at most
 * @param unique keys of the elements whose texts must differ from one element to the next
 */
public record ListOf<T>(ValueType<T> element, int least, int most, List<String> unique)
    implements ValueType<List<T>> {
  /** So many entries a list has at most. */
  public static final int MOST = 20_000;

  /** What is wholly out of step need not be told to its end. */
  static final int MOST_ERRORS = 1000;

  public ListOf {
    unique = List.copyOf(unique);
  }

  /** A list that may be empty. */
  public static <T> ListOf<T> any(ValueType<T> element) {
    return new ListOf<>(element, 0, MOST, List.of());
  }

  /** A list of one at least. */
  public static <T> ListOf<T> some(ValueType<T> element) {
    return new ListOf<>(element, 1, MOST, List.of());
  }

  /** The same with no more than so many. */
  public ListOf<T> upTo(int limit) {
    return new ListOf<>(element, least, limit, unique);
  }

  /** The same, in which no two have the same text under one of these keys. */
  public ListOf<T> unique(String... keys) {
    return new ListOf<>(element, least, most, List.of(keys));
  }

  @Override
  public <R> R match(Cases<R> cases) {
    return cases.list(this);
  }

  @Override
  public String allowed() {
    return (least > 0 ? YamlMistakes.LIST_LEAST : YamlMistakes.LIST).of(this);
  }

  @Override
  public Optional<List<T>> read(Node node, String label, Reader in) {
    if (!(node instanceof SequenceNode list)) {
      in.error(node, noList(node, label));
      return Optional.empty();
    }
    int size = list.getValue().size();
    if (size < least || size > most) {
      in.error(node, otherSize(size, label));
      return Optional.empty();
    }
    int before = in.count();
    unique.forEach(key -> checkUnique(list, label, key, in));
    List<T> values = new ArrayList<>();
    for (Node each : list.getValue()) {
      if (in.count() - before >= MOST_ERRORS) {
        in.error(each, YamlMistakes.REST_NOT_READ.with(label, MOST_ERRORS));
        break;
      }
      element.read(each, YamlMistakes.ENTRY.of(label), in).ifPresent(values::add);
    }
    return in.count() > before || values.size() < size ? Optional.empty() : Optional.of(values);
  }

  private Mistake noList(Node node, String label) {
    return node instanceof ScalarNode one && !one.getValue().isBlank() && element.isOneText()
        ? YamlMistakes.TEXT_FOR_A_LIST.with(label, node, this, one.getValue().strip())
        : YamlMistakes.NOT_THIS.with(label, node, this, Optional.empty());
  }

  private Mistake otherSize(int size, String label) {
    if (size > most) {
      return YamlMistakes.TOO_MANY_ENTRIES.with(label, size, most);
    }
    return size == 1
        ? YamlMistakes.ONE_ENTRY.with(label, least)
        : YamlMistakes.TOO_FEW_ENTRIES.with(label, size, least);
  }

  private static void checkUnique(SequenceNode list, String label, String key, Reader in) {
    Map<String, Node> seen = new HashMap<>();
    for (Node each : list.getValue()) {
      Optional<Node> value =
          each instanceof MappingNode m ? Reader.valueOf(m, key) : Optional.empty();
      if (value.isPresent() && value.get() instanceof ScalarNode text) {
        Node first = seen.putIfAbsent(text.getValue().strip(), text);
        if (first != null) {
          in.error(
              text,
              YamlMistakes.VALUE_TWICE.with(
                  key, text.getValue(), label, SourcePosition.of(in.file(), first)));
        }
      }
    }
  }
}
