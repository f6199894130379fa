package gradepost.yaml;

import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.nodes.Node;

/** A place in a file; line and column count from 1. */
public record SourcePosition(String file, int line, int column) {

  /** Where a node begins. */
  public static SourcePosition of(String file, Node node) {
    return of(file, node.getStartMark());
  }

  static SourcePosition of(String file, Mark mark) {
    return new SourcePosition(file, mark.getLine() + 1, mark.getColumn() + 1);
  }

  /** "line 5, column 7", for a second place in one message. */
  public String inWords() {
    return YamlMistakes.POSITION.of(this);
  }
}
