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
    return "a group of names, each with " + valueNoun;
  }

  @Override
  public Optional<Map<String, String>> read(Node node, String label, Reader in) {
    if (!(node instanceof MappingNode group)) {
      in.error(node, label + " is " + Nodes.described(node), allowed(), "");
      return Optional.empty();
    }
    int before = in.count();
    Map<String, String> words = new LinkedHashMap<>();
    Map<String, Node> seen = new HashMap<>();
    ValueType<String> value = Common.text(valueNoun);
    for (NodeTuple tuple : group.getValue()) {
      if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
        in.error(tuple.getKeyNode(), "a key of " + label + " is not a word", "a name", "");
        continue;
      }
      Optional<Node> first = Optional.ofNullable(seen.putIfAbsent(key.getValue(), key));
      first.ifPresent(
          node1 ->
              in.error(
                  key,
                  "the key %s is given twice, first on %s"
                      .formatted(
                          Nodes.shown(key.getValue()),
                          SourcePosition.of(in.file(), node1).inWords()),
                  "each key once",
                  ""));
      value
          .read(tuple.getValueNode(), label, in)
          .ifPresent(word -> words.put(key.getValue().strip(), word));
    }
    return in.count() > before ? Optional.empty() : Optional.of(Collections.unmodifiableMap(words));
  }
}
