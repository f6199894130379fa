package gradepost.render;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The text of a page for the screen, in which no quantity is broken over two lines. */
final class ScreenText {
  /** Drawings and styles, which have no lines; else a tag, and the text up to the next one. */
  private static final Pattern PIECE =
      Pattern.compile("(?s)<(style|svg|title)\\b.*?</\\1>|<[^>]*>|[^<]+");

  /** The same page with spaces that hold, by the rules of the paper. */
  static String whole(String page) {
    StringBuilder out = new StringBuilder(page.length());
    Matcher pieces = PIECE.matcher(page);
    while (pieces.find()) {
      String piece = pieces.group();
      out.append(piece.startsWith("<") ? piece : LineBreaks.held(piece));
    }
    return out.toString();
  }

  private ScreenText() {}
}
