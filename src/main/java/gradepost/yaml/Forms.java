package gradepost.yaml;

import gradepost.units.Nearest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * Several ways of saying the same thing, told apart by a key that only one of them has.
 *
 * @param forms by that key; where none of the keys is there, nor nearly, the last one is meant
 */
public record Forms<T>(String noun, Map<String, ValueType<? extends T>> forms)
    implements ValueType<T> {
  public Forms {
    forms = Collections.unmodifiableMap(new LinkedHashMap<>(forms));
  }

  @Override
  public <R> R match(Cases<R> cases) {
    return cases.forms(this);
  }

  @Override
  public boolean isGroup() {
    return true;
  }

  @Override
  public String allowed() {
    return YamlMistakes.FORMS.of(this);
  }

  @Override
  public Optional<T> read(Node node, String label, Reader in) {
    if (!(node instanceof MappingNode group)) {
      in.error(node, YamlMistakes.NOT_THIS.with(label, node, this, Optional.empty()));
      return Optional.empty();
    }
    return Optional.ofNullable(forms.get(which(group)))
        .flatMap(form -> form.read(node, label, in))
        .map(value -> value);
  }

  /** The form whose key is there, or is nearly there; else the last one. */
  private String which(MappingNode group) {
    List<String> keys = new ArrayList<>(forms.keySet());
    for (String key : keys) {
      if (Reader.valueOf(group, key).isPresent()) {
        return key;
      }
    }
    return group.getValue().stream()
        .map(NodeTuple::getKeyNode)
        .flatMap(key -> key instanceof ScalarNode s ? Stream.of(s.getValue()) : Stream.empty())
        .flatMap(typed -> Nearest.to(typed, keys).stream())
        .findFirst()
        .orElse(keys.get(keys.size() - 1));
  }
}
