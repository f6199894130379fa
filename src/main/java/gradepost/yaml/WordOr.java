package gradepost.yaml;

import gradepost.units.Nearest;
import java.util.List;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/** Either one fixed word with its value, or a list or a group of keys. */
public record WordOr<T>(String word, T value, ValueType<? extends T> other)
    implements ValueType<T> {

  @Override
  public <R> R match(Cases<R> cases) {
    return cases.wordOr(this);
  }

  @Override
  public String allowed() {
    return YamlMistakes.WORD_OR.of(this);
  }

  @Override
  public Optional<T> read(Node node, String label, Reader in) {
    if (node instanceof ScalarNode scalar) {
      if (scalar.getValue().strip().equals(word)) {
        return Optional.of(value);
      }
      Optional<String> near = Nearest.to(scalar.getValue(), List.of(word));
      in.error(node, YamlMistakes.NOT_THIS.with(label, node, this, near));
      return Optional.empty();
    }
    return other.read(node, label, in).map(v -> v);
  }
}
