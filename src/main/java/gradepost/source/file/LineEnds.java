package gradepost.source.file;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;

/**
 * The ends of lines: an editor or a version control system may change them in a whole file, and it
 * still says the same. Inputs of a pack are kept with line feeds alone; a file on the disk keeps
 * the ends that it has.
 */
public final class LineEnds {

  /** The same text, each line of which ends with a line feed; these very bytes where it is so. */
  public static byte[] plain(byte[] text) {
    if (pairs(text) == 0) {
      return text;
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream(text.length);
    for (int i = 0; i < text.length; i++) {
      if (!pair(text, i)) {
        out.write(text[i]);
      }
    }
    return out.toByteArray();
  }

  /** Whether two texts are the same but for the ends of their lines. */
  public static boolean same(byte[] one, byte[] other) {
    return Arrays.equals(plain(one), plain(other));
  }

  /**
   * A text with the ends that another one has in most of its lines.
   *
   * @param present what lies in the file until now
   */
  public static byte[] as(byte[] present, byte[] text) {
    int lines = 0;
    for (byte each : present) {
      lines += each == '\n' ? 1 : 0;
    }
    byte[] plain = plain(text);
    if (2 * pairs(present) <= lines) {
      return plain;
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream(plain.length + lines);
    for (byte each : plain) {
      if (each == '\n') {
        out.write('\r');
      }
      out.write(each);
    }
    return out.toByteArray();
  }

  private static int pairs(byte[] text) {
    int pairs = 0;
    for (int i = 0; i < text.length; i++) {
      pairs += pair(text, i) ? 1 : 0;
    }
    return pairs;
  }

  /** Whether a carriage return stands here that belongs to the line feed behind it. */
  private static boolean pair(byte[] text, int i) {
    return text[i] == '\r' && i + 1 < text.length && text[i + 1] == '\n';
  }

  private LineEnds() {}
}
