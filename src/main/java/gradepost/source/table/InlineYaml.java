package gradepost.source.table;

import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** YAML on one line. */
public final class InlineYaml {
  private static final Pattern PLAIN =
      Pattern.compile("[\\p{L}\\p{N}(./+](?:[^\\p{Cntrl},\\[\\]{}#:\"]|:(?=\\S)(?![,\\[\\]{}]))*");

  /** A node as it could be typed again, comments left out. */
  public static String text(Node node) {
    if (node instanceof SequenceNode list) {
      return list.getValue().stream()
          .map(InlineYaml::text)
          .collect(Collectors.joining(", ", "[", "]"));
    } else if (node instanceof MappingNode group) {
      return group.getValue().stream()
          .map(t -> text(t.getKeyNode()) + ": " + text(t.getValueNode()))
          .collect(Collectors.joining(", ", "{", "}"));
    }
    return scalar(((ScalarNode) node).getValue());
  }

  /** Plain where YAML takes it for the same text, else in quotation marks. */
  public static String scalar(String value) {
    if (PLAIN.matcher(value).matches() && value.equals(value.strip())) {
      return value;
    }
    StringBuilder quoted = new StringBuilder("\"");
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      switch (c) {
        case '"' -> quoted.append("\\\"");
        case '\\' -> quoted.append("\\\\");
        case '\n' -> quoted.append("\\n");
        case '\r' -> quoted.append("\\r");
        case '\t' -> quoted.append("\\t");
        default -> quoted.append(c);
      }
    }
    return quoted.append('"').toString();
  }

  /** The offset behind the last character that belongs to a node: no blank line, no comment. */
  static int end(Node node) {
    if (node instanceof SequenceNode list && !flow(node) && !list.getValue().isEmpty()) {
      return end(list.getValue().get(list.getValue().size() - 1));
    } else if (node instanceof MappingNode group && !flow(node) && !group.getValue().isEmpty()) {
      return end(group.getValue().get(group.getValue().size() - 1).getValueNode());
    }
    return node.getEndMark().getIndex();
  }

  static boolean flow(Node node) {
    return node instanceof org.yaml.snakeyaml.nodes.CollectionNode<?> c
        && c.getFlowStyle() == org.yaml.snakeyaml.DumperOptions.FlowStyle.FLOW;
  }

  private InlineYaml() {}
}
