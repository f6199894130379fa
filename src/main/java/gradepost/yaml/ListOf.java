package gradepost.yaml;

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
  static final int MOST = 20_000;

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
    String count = least > 0 ? " (" + least + " at least)" : "";
    return "a list" + count + ", each " + element.allowed();
  }

  @Override
  public Optional<List<T>> read(Node node, String label, Reader in) {
    if (!(node instanceof SequenceNode list)) {
      in.error(node, label + " is " + Nodes.described(node), allowed(), maybe(node));
      return Optional.empty();
    }
    int size = list.getValue().size();
    if (size < least || size > most) {
      in.error(
          node,
          label + " has " + size + (size == 1 ? " entry" : " entries"),
          size < least ? least + " at least" : most + " at most",
          "");
      return Optional.empty();
    }
    int before = in.count();
    unique.forEach(key -> checkUnique(list, label, key, in));
    List<T> values = new ArrayList<>();
    for (Node each : list.getValue()) {
      element.read(each, "an entry of " + label, in).ifPresent(values::add);
    }
    return in.count() > before || values.size() < size ? Optional.empty() : Optional.of(values);
  }

  private String maybe(Node node) {
    boolean word = node instanceof ScalarNode scalar && !scalar.getValue().isBlank();
    return word && element.isOneText() ? "[" + ((ScalarNode) node).getValue().strip() + "]" : "";
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
              "the %s %s stands twice under %s, first on %s"
                  .formatted(
                      key,
                      Nodes.shown(text.getValue()),
                      label,
                      SourcePosition.of(in.file(), first).inWords()),
              "each " + key + " once",
              "");
        }
      }
    }
  }
}
