package gradepost.render;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The text of a page for the screen, in which no quantity is broken over two lines. */
final class ScreenText {
  /** Drawings and styles, which have no lines; else a tag, and the text up to the next one. */
  private static final Pattern PIECE =
      Pattern.compile("(?s)<(style|svg|title)\\b.*?</\\1>|<[^>]*>|[^<]+");

  /** A date, and the hour behind it: a browser would break it at its hyphens. */
  private static final Pattern DATE =
      Pattern.compile("\\d{4}-\\d{2}-\\d{2}(?:[ \u00a0]\\d{2}:\\d{2})?");

  private static final String KEPT_WHOLE = "<span class=\"whole\">$0</span>";

  /** The same page with spaces that hold, by the rules of the paper. */
  static String whole(String page) {
    StringBuilder out = new StringBuilder(page.length());
    Matcher pieces = PIECE.matcher(page);
    while (pieces.find()) {
      String piece = pieces.group();
      out.append(piece.startsWith("<") ? piece : held(piece));
    }
    return out.toString();
  }

  private static String held(String text) {
    String held = LineBreaks.held(text);
    return held.indexOf('-') < 0 ? held : DATE.matcher(held).replaceAll(KEPT_WHOLE);
  }

  private ScreenText() {}
}
