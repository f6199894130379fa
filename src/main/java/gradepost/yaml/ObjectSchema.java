package gradepost.yaml;

import gradepost.units.Nearest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * A key table: a group of keys that makes one value.
 *
 * @param noun what the group describes, with its article ("a curve")
 * @param keys in the order in which they are read and documented
 * @param checks of keys against each other; each reports what it finds
 * @param build makes the value; called only when every key was good and no check complained
 */
public record ObjectSchema<T>(
    String noun, List<Key<?>> keys, List<Consumer<Values>> checks, Function<Values, T> build)
    implements ValueType<T> {
  /** No group has a tenth of it; with more, each key would be told of. */
  static final int MOST_KEYS = 1000;

  public ObjectSchema {
    keys = List.copyOf(keys);
    checks = List.copyOf(checks);
  }

  /** A group of these keys that makes one value, without checks between them. */
  public static <T> ObjectSchema<T> of(String noun, List<Key<?>> keys, Function<Values, T> build) {
    return new ObjectSchema<>(noun, keys, List.of(), build);
  }

  /** The same with one more check between the values. */
  public ObjectSchema<T> checked(Consumer<Values> check) {
    List<Consumer<Values>> more = new ArrayList<>(checks);
    more.add(check);
    return new ObjectSchema<>(noun, keys, more, build);
  }

  /** The names of the keys, in order. */
  public List<String> keyNames() {
    return keys.stream().map(Key::name).toList();
  }

  @Override
  public <R> R match(Cases<R> cases) {
    return cases.group(this);
  }

  @Override
  public boolean isGroup() {
    return true;
  }

  @Override
  public String allowed() {
    return YamlMistakes.GROUP.of(this);
  }

  @Override
  public Optional<T> read(Node node, String label, Reader in) {
    int before = in.count();
    return open(node, label, in)
        .flatMap(values -> finish(values, readAll(keys, values, in), before));
  }

  /** Reads only some of the keys; whether all of them were good. */
  public boolean readAll(List<Key<?>> some, Values values, Reader in) {
    boolean good = true;
    for (Key<?> key : some) {
      good &= readOne(key, values, in);
    }
    return good;
  }

  /** Makes the value when all keys were good and no check complains. */
  public Optional<T> finish(Values values, boolean good, int problemsBefore) {
    checks.forEach(check -> check.accept(values));
    if (!good || values.in().count() > problemsBefore) {
      return Optional.empty();
    }
    try {
      T value = build.apply(values);
      values.remember(value);
      return Optional.of(value);
    } catch (IllegalArgumentException e) {
      values.in().error(values.spot(), YamlMistakes.REFUSED.with(e));
      return Optional.empty();
    }
  }

  private static <V> boolean readOne(Key<V> key, Values values, Reader in) {
    Optional<Node> node = values.node(key);
    if (node.isEmpty()) {
      return !key.required();
    }
    Optional<V> value = key.kind().read(node.get(), key.name(), in);
    value.ifPresent(v -> values.put(key, v));
    return value.isPresent();
  }

  /** Whether a group has no more keys than anybody typed; reported otherwise. */
  public boolean bounded(Node node, Reader in) {
    int count = node instanceof MappingNode mapping ? mapping.getValue().size() : 0;
    if (count > MOST_KEYS) {
      in.error(node, YamlMistakes.TOO_MANY_KEYS.with(noun, count, MOST_KEYS));
    }
    return count <= MOST_KEYS;
  }

  /** The group itself: that it is one, that its keys are known, given once, and none is missing. */
  public Optional<Values> open(Node node, String label, Reader in) {
    if (!(node instanceof MappingNode mapping)) {
      in.error(node, YamlMistakes.NOT_THIS.with(label, node, this, Optional.empty()));
      return Optional.empty();
    }
    if (!bounded(node, in)) {
      return Optional.empty();
    }
    List<String> free = free(mapping);
    Map<String, Node> seen = new HashMap<>();
    for (NodeTuple tuple : mapping.getValue()) {
      Node name = tuple.getKeyNode();
      if (!(name instanceof ScalarNode scalar)) {
        in.error(name, YamlMistakes.KEY_NOT_A_WORD.with(noun, name));
        continue;
      }
      String word = scalar.getValue();
      Node first = seen.putIfAbsent(word, name);
      if (first != null) {
        in.error(name, YamlMistakes.KEY_TWICE.with(word, SourcePosition.of(in.file(), first)));
      } else if (!keyNames().contains(word)) {
        in.error(
            name, YamlMistakes.UNKNOWN_KEY.with(noun, word, keyNames(), Nearest.to(word, free)));
      }
    }
    for (Key<?> key : keys) {
      if (key.required() && !seen.containsKey(key.name())) {
        in.error(node, YamlMistakes.KEY_MISSING.with(noun, key.name(), key.kind()));
      }
    }
    return Optional.of(new Values(mapping, in));
  }

  /** The keys that a group does not have: what an unknown one may be meant for. */
  private List<String> free(MappingNode group) {
    Set<String> typed = new HashSet<>();
    for (NodeTuple tuple : group.getValue()) {
      if (tuple.getKeyNode() instanceof ScalarNode name) {
        typed.add(name.getValue());
      }
    }
    return keyNames().stream().filter(k -> !typed.contains(k)).toList();
  }
}
