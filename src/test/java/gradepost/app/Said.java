package gradepost.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;

/**
 * A text of a paper, and where in the paper it stands.
 *
 * @param where the names of the parts that hold it, the outermost first
 */
record Said(String where, String text) {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** Every text that a value of {@code briefing} holds. */
  static List<Said> of(Object value) {
    List<Said> out = new ArrayList<>();
    collect("", MAPPER.valueToTree(value), out);
    return out;
  }

  private static void collect(String where, JsonNode node, List<Said> out) {
    if (node.isTextual()) {
      out.add(new Said(where, node.textValue()));
    }
    node.properties().forEach(p -> collect(where + "/" + p.getKey(), p.getValue(), out));
    if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        collect(where + "/" + i, node.get(i), out);
      }
    }
  }
}
