package gradepost.yaml;

import java.util.List;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;

/** Either a list, or a group of keys that stands for one. */
public record ListOr<T>(ListOf<T> list, ObjectSchema<List<T>> shape) implements ValueType<List<T>> {

  @Override
  public <R> R match(Cases<R> cases) {
    return cases.listOr(this);
  }

  @Override
  public String allowed() {
    return YamlMistakes.LIST_OR_GROUP.of(this);
  }

  @Override
  public Optional<List<T>> read(Node node, String label, Reader in) {
    return node instanceof MappingNode ? shape.read(node, label, in) : list.read(node, label, in);
  }
}
