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
      return scalar.getValue().isBlank() ? YamlMistakes.FOUND_EMPTY : shown(scalar.getValue());
    }
    if (node instanceof SequenceNode) {
      return YamlMistakes.FOUND_LIST;
    }
    return node instanceof MappingNode ? YamlMistakes.FOUND_GROUP : YamlMistakes.FOUND_ELSE;
  }

  /** A text in quotation marks, on one line and not too long. */
  public static String shown(String text) {
    return PrintedText.shown(text);
  }

  private Nodes() {}
}
