package gradepost.app;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A text of a paper, and where in the paper it stands.
 *
 * @param where the names of the parts that hold it, the outermost first
 */
record Said(String where, String text) {
  private static final ObjectMapper MAPPER =
      new ObjectMapper().registerModule(new SimpleModule().addSerializer(new Whole()));

  /** What is there, or nothing. */
  private static final class Whole extends StdSerializer<Optional<?>> {
    private static final long serialVersionUID = 1;

    private Whole() {
      super(Optional.class, false);
    }

    @Override
    public void serialize(Optional<?> value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      provider.defaultSerializeValue(value.orElse(null), out);
    }
  }

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
