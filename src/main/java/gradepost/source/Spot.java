package gradepost.source;

import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.nodes.Node;

/** A place in a file; line and column count from 1. */
public record Spot(String file, int line, int column) {

  static Spot of(String file, Node node) {
    return of(file, node.getStartMark());
  }

  static Spot of(String file, Mark mark) {
    return new Spot(file, mark.getLine() + 1, mark.getColumn() + 1);
  }

  /** "line 5, column 7", for a second place in one message. */
  String inWords() {
    return "line " + line + ", column " + column;
  }
}
