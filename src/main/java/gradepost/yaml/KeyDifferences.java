package gradepost.yaml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** In which keys two texts of one file differ; comments, spaces and order of keys do not count. */
public final class KeyDifferences {

  /**
   * Names of the keys, a key within a group as "issue: number"; empty where both say the same.
   *
   * @param then bytes of the file as it was
   * @param now bytes of the file as it is
   */
  public static List<String> between(byte[] then, byte[] now) {
    Optional<Node> a = YamlText.compose("", then, p -> {});
    Optional<Node> b = YamlText.compose("", now, p -> {});
    List<String> out = new ArrayList<>();
    if (a.isPresent() && b.isPresent()) {
      differ(a.get(), b.get(), "", out);
    } else if (a.isPresent() || b.isPresent()) {
      out.add(YamlMistakes.WHOLE_FILE);
    }
    return List.copyOf(out);
  }

  private static void differ(Node a, Node b, String name, List<String> out) {
    if (a instanceof MappingNode then && b instanceof MappingNode now) {
      Map<String, Node> old = keys(then);
      Map<String, Node> all = keys(now);
      for (Map.Entry<String, Node> key : all.entrySet()) {
        String inner = name.isEmpty() ? key.getKey() : name + ": " + key.getKey();
        Optional<Node> was = Optional.ofNullable(old.remove(key.getKey()));
        if (was.isPresent()) {
          differ(was.get(), key.getValue(), inner, out);
        } else {
          out.add(inner);
        }
      }
      old.keySet().forEach(k -> out.add(name.isEmpty() ? k : name + ": " + k));
    } else if (!same(a, b)) {
      out.add(name.isEmpty() ? YamlMistakes.WHOLE_FILE : name);
    }
  }

  private static Map<String, Node> keys(MappingNode group) {
    Map<String, Node> out = new LinkedHashMap<>();
    for (NodeTuple tuple : group.getValue()) {
      String key = tuple.getKeyNode() instanceof ScalarNode word ? word.getValue() : "";
      out.put(key, tuple.getValueNode());
    }
    return out;
  }

  private static boolean same(Node a, Node b) {
    if (a instanceof ScalarNode then && b instanceof ScalarNode now) {
      return then.getValue().equals(now.getValue());
    } else if (a instanceof MappingNode && b instanceof MappingNode) {
      List<String> inner = new ArrayList<>();
      differ(a, b, "", inner);
      return inner.isEmpty();
    } else if (a instanceof SequenceNode then && b instanceof SequenceNode now) {
      List<Node> old = then.getValue();
      List<Node> all = now.getValue();
      boolean same = old.size() == all.size();
      for (int i = 0; same && i < all.size(); i++) {
        same = same(old.get(i), all.get(i));
      }
      return same;
    }
    return false;
  }

  private KeyDifferences() {}
}
