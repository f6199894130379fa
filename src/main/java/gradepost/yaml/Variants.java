package gradepost.yaml;

import gradepost.units.Nearest;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;

/**
 * Several key tables of which one key says which is meant.
 *
 * @param key the name of that key; every table has it too
 */
public record Variants<T>(String noun, String key, Map<String, ObjectSchema<? extends T>> shapes)
    implements ValueType<T> {
  public Variants {
    shapes = Collections.unmodifiableMap(new LinkedHashMap<>(shapes));
  }

  @Override
  public <R> R match(Cases<R> cases) {
    return cases.variants(this);
  }

  @Override
  public boolean isGroup() {
    return true;
  }

  @Override
  public String allowed() {
    return YamlMistakes.VARIANTS.of(this);
  }

  @Override
  public Optional<T> read(Node node, String label, Reader in) {
    if (!(node instanceof MappingNode mapping)) {
      in.error(node, YamlMistakes.NOT_THIS.with(label, node, this, Optional.empty()));
      return Optional.empty();
    }
    Optional<Node> which = Reader.valueOf(mapping, key);
    if (which.isEmpty()) {
      in.error(node, YamlMistakes.KEY_MISSING.with(noun, key, this));
      return Optional.empty();
    }
    String word = which.get() instanceof ScalarNode scalar ? scalar.getValue().strip() : "";
    Optional<ObjectSchema<? extends T>> shape = Optional.ofNullable(shapes.get(word));
    if (shape.isEmpty()) {
      in.error(
          which.get(),
          word.isEmpty()
              ? YamlMistakes.VARIANT_NOT_A_WORD.with(key, which.get(), shapes.keySet())
              : YamlMistakes.UNKNOWN_VARIANT.with(
                  key, word, shapes.keySet(), Nearest.to(word, shapes.keySet())));
      return Optional.empty();
    }
    return shape.get().read(node, label, in).map(value -> value);
  }
}
