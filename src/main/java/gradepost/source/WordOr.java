package gradepost.source;

import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/** Either one fixed word with its value, or a group of keys. */
public record WordOr<T>(String word, T value, Shape<? extends T> shape) implements Kind<T> {

  @Override
  public String allowed() {
    return word + ", or " + shape.allowed();
  }

  @Override
  public Optional<T> read(Node node, String label, Reader in) {
    if (node instanceof ScalarNode scalar) {
      if (scalar.getValue().strip().equals(word)) {
        return Optional.of(value);
      }
      in.error(node, label + " is " + Nodes.described(node), allowed(), "");
      return Optional.empty();
    }
    return shape.read(node, label, in).map(v -> v);
  }
}
