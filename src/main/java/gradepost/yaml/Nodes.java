package gradepost.yaml;

import gradepost.units.PrintedText;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** Nodes in words. */
public final class Nodes {

  /** "a list", "a group of keys", "empty", or the text itself. */
  public static String described(Node node) {
    if (node instanceof ScalarNode scalar) {
      return scalar.getValue().isBlank() ? "empty" : shown(scalar.getValue());
    }
    if (node instanceof SequenceNode) {
      return "a list";
    }
    return node instanceof MappingNode ? "a group of keys" : "something else";
  }

  /** A text in quotation marks, on one line and not too long. */
  public static String shown(String text) {
    String line = PrintedText.seen(text);
    int length = line.codePointCount(0, line.length());
    return "\""
        + (length > 60 ? line.substring(0, line.offsetByCodePoints(0, 57)) + "…" : line)
        + "\"";
  }

  private Nodes() {}
}
