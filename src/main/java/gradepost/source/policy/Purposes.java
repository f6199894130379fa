package gradepost.source.policy;

import gradepost.units.PrintedText;
import gradepost.yaml.Key;
import gradepost.yaml.Reader;
import gradepost.yaml.Values;
import java.util.LinkedHashMap;
import java.util.Map;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Collects what each value of a policy is for, by its key: "margins.before-board". */
final class Purposes {

  /** Called for a policy without errors only: its groups are known key tables of little depth. */
  static Map<String, String> of(Values policy) {
    Map<String, String> purposes = new LinkedHashMap<>();
    for (Key<?> key : PolicyTable.POLICY.keys()) {
      if (key.equals(DegradedTable.DEGRADED)) {
        // It is for editions, whose technique carries its own purposes.
        continue;
      }
      policy.node(key).ifPresent(node -> collect(key.name(), node, purposes));
    }
    return purposes;
  }

  private static void collect(String path, Node node, Map<String, String> purposes) {
    if (node instanceof SequenceNode list) {
      for (Node each : list.getValue()) {
        if (each instanceof MappingNode entry) {
          Reader.valueOf(entry, "name")
              .filter(ScalarNode.class::isInstance)
              .ifPresent(n -> collect(path + "." + ((ScalarNode) n).getValue(), each, purposes));
        }
      }
    } else if (node instanceof MappingNode group) {
      Reader.valueOf(group, PolicyTables.FOR.name())
          .filter(ScalarNode.class::isInstance)
          .ifPresent(n -> purposes.put(path, PrintedText.joined(((ScalarNode) n).getValue())));
      for (NodeTuple tuple : group.getValue()) {
        if (tuple.getKeyNode() instanceof ScalarNode key) {
          collect(path + "." + key.getValue(), tuple.getValueNode(), purposes);
        }
      }
    }
  }

  private Purposes() {}
}
