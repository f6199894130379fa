package gradepost.app.export;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import gradepost.source.Schemas;
import gradepost.source.file.FileKind;

/** The schema of a kind of file, for an editor that completes, explains and checks keys. */
public final class SchemaText {
  private static final DefaultIndenter LINES = new DefaultIndenter("  ", "\n");
  private static final ObjectWriter WRITER =
      new ObjectMapper().writer(new DefaultPrettyPrinter().withObjectIndenter(LINES));

  /** The name of the schema of a hand-over. */
  public static final String HAND_OVER = HandOver.KIND;

  /** JSON, ending with a line feed. */
  public static String of(FileKind kind) {
    return text(Schemas.of(kind));
  }

  /** That of the file which {@code brief --json} adds to a paper. */
  public static String ofHandOver() {
    return text(HandOverSchema.tree());
  }

  private static String text(Object tree) {
    try {
      return WRITER.writeValueAsString(tree) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of maps and texts can be written", e);
    }
  }

  /** As it is called beside the files that refer to it. */
  public static String fileName(FileKind kind) {
    return kind.word() + ".schema.json";
  }

  private SchemaText() {}
}
