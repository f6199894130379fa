package gradepost.yaml;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;

/** A group whose keys are names from elsewhere and whose values are words; in the order typed. */
public record WordMap(String valueNoun) implements ValueType<Map<String, String>> {

  @Override
  public <R> R match(Cases<R> cases) {
    return cases.wordMap(this);
  }

  @Override
  public String allowed() {
    return YamlMistakes.WORD_MAP.of(this);
  }

  @Override
  public Optional<Map<String, String>> read(Node node, String label, Reader in) {
    if (!(node instanceof MappingNode group)) {
      in.error(node, YamlMistakes.NOT_THIS.with(label, node, this, Optional.empty()));
      return Optional.empty();
    }
    int before = in.count();
    Map<String, String> words = new LinkedHashMap<>();
    Map<String, Node> seen = new HashMap<>();
    ValueType<String> value = Common.text(valueNoun);
    for (NodeTuple tuple : group.getValue()) {
      if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
        in.error(tuple.getKeyNode(), YamlMistakes.NAME_NOT_A_WORD.with(label));
        continue;
      }
      Optional<Node> first = Optional.ofNullable(seen.putIfAbsent(key.getValue(), key));
      first.ifPresent(
          place ->
              in.error(
                  key,
                  YamlMistakes.KEY_TWICE.with(
                      key.getValue(), SourcePosition.of(in.file(), place))));
      value
          .read(tuple.getValueNode(), label, in)
          .ifPresent(word -> words.put(key.getValue().strip(), word));
    }
    return in.count() > before ? Optional.empty() : Optional.of(Collections.unmodifiableMap(words));
  }
}
