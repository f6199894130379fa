package gradepost.source.table;

import gradepost.yaml.Problem;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;

/** From the bytes of a table to its text, as spreadsheets write it. */
public final class TableText {
  private static final String BYTE_ORDER_MARK = "\ufeff";

  /**
   * The text: UTF-8, UTF-16 with its mark, else Windows-1252, which is told.
   *
   * @param name what the table is called in problems
   */
  public static String of(String name, byte[] bytes, Consumer<Problem> problems) {
    String text = decoded(name, bytes, problems);
    String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    return plain.replaceFirst("^sep=(.)\\R", "");
  }

  private static String decoded(String name, byte[] bytes, Consumer<Problem> problems) {
    if (marked(bytes, 0xFE, 0xFF) || marked(bytes, 0xFF, 0xFE)) {
      return new String(bytes, StandardCharsets.UTF_16);
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      SourcePosition top = new SourcePosition(name, 1, 1);
      problems.accept(new Problem(top, Severity.NOTE, TableMistakes.NOT_UTF_8));
      return new String(bytes, Charset.forName("windows-1252"));
    }
  }

  private static boolean marked(byte[] bytes, int first, int second) {
    return bytes.length > 1 && (bytes[0] & 0xFF) == first && (bytes[1] & 0xFF) == second;
  }

  private TableText() {}
}
