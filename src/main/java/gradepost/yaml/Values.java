package gradepost.yaml;

import gradepost.text.Mistake;
import java.util.IdentityHashMap;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** The values read from one group of keys. */
public final class Values {
  private final MappingNode node;
  private final Reader in;
  private final IdentityHashMap<Key<?>, Object> read = new IdentityHashMap<>();

  Values(MappingNode node, Reader in) {
    this.node = node;
    this.in = in;
  }

  /** The same values, now that more is known of the route. */
  public Values within(Reader known) {
    Values same = new Values(node, known);
    same.read.putAll(read);
    return same;
  }

  void put(Key<?> key, Object value) {
    read.put(key, value);
  }

  /** The reader that they came from. */
  public Reader in() {
    return in;
  }

  /** The value of a key that is required or has a fallback. */
  public <T> T get(Key<T> key) {
    return find(key).orElseThrow(() -> new IllegalStateException("no value for " + key.name()));
  }

  /** The value of a key, if it is there and is good. */
  public <T> Optional<T> find(Key<T> key) {
    return typed(Optional.ofNullable(read.get(key)).or(key::fallback));
  }

  /** The node of a value; empty where the key is not there. */
  public Optional<Node> node(Key<?> key) {
    return Reader.valueOf(node, key.name());
  }

  /** Remembers that {@code value} was made of this group. */
  public void remember(Object value) {
    in.remember(value, node);
  }

  /** Whether the key is there. */
  public boolean has(Key<?> key) {
    return Reader.valueOf(node, key.name()).isPresent();
  }

  /** Where the value of a key stands, or the group itself where it was left out. */
  public SourcePosition spot(Key<?> key) {
    Node place = Reader.valueOf(node, key.name()).orElse(node);
    return SourcePosition.of(in.file(), place);
  }

  /** Where an entry of a list under a key stands. */
  public SourcePosition spot(Key<?> key, int index) {
    return node(key)
        .filter(SequenceNode.class::isInstance)
        .map(list -> SourcePosition.of(in.file(), ((SequenceNode) list).getValue().get(index)))
        .orElse(spot(key));
  }

  /** Where the group begins. */
  public SourcePosition spot() {
    return SourcePosition.of(in.file(), node);
  }

  /** Adds an error at the value of a key. */
  public void error(Key<?> key, Mistake mistake) {
    in.error(spot(key), mistake);
  }

  /** Every put is made with the key's own kind, so that the value is of the key's type. */
  @SuppressWarnings("unchecked")
  private static <T> Optional<T> typed(Optional<?> value) {
    return (Optional<T>) value;
  }
}
