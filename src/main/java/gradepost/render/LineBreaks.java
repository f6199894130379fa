package gradepost.render;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Where a line of the paper may end: after a space or between the letters of a hyphened word. A
 * number stays with its unit, a date with its hour, and a number that ends a name with the name; a
 * gradient and a mileage stay whole. The library would break after the stroke of km/h too.
 */
final class LineBreaks implements FSTextBreaker {
  private static final Set<String> UNITS =
      Set.of(
          "%",
          "‰", "N/t", "bar", "ch", "h", "kN", "kWh", "km", "km/h", "m", "mi", "min", "mm", "mph",
          "psi", "s", "t", "yd");

  private static final Pattern NUMBER = Pattern.compile("[^\\p{L}]*\\d[^\\p{L}]*");
  private static final Pattern CHAINS = Pattern.compile("\\d\\d(\\.\\d)?ch\\W*");
  private static final Pattern MILES = Pattern.compile("\\W*\\d+m");
  private static final Pattern DATE = Pattern.compile("\\W*\\d{4}-\\d\\d-\\d\\d");
  private static final Pattern HOUR = Pattern.compile("\\d\\d:\\d\\d\\W*");
  private static final Pattern LAST = Pattern.compile("\\d{1,2}[.,;:)]*");
  private static final Pattern TAIL = Pattern.compile("[.,;:)]+$");
  private static final char HOLDS = '\u00a0';

  private String text = "";
  private int at;

  @Override
  public void setText(String newText) {
    text = newText;
    at = 0;
  }

  @Override
  public int next() {
    if (at >= text.length()) {
      return BreakIterator.DONE;
    }
    do {
      at++;
    } while (at < text.length() && !mayEndAt(at));
    return at;
  }

  /** The text with a space that holds wherever two words belong together. */
  static String held(String text) {
    LineBreaks breaks = new LineBreaks();
    breaks.setText(text);
    StringBuilder out = new StringBuilder(text);
    for (int i = 1; i < text.length(); i++) {
      if (text.charAt(i - 1) == ' ' && text.charAt(i) != ' ' && breaks.together(i)) {
        out.setCharAt(i - 1, HOLDS);
      }
    }
    return out.toString();
  }

  private boolean mayEndAt(int i) {
    char before = text.charAt(i - 1);
    char after = text.charAt(i);
    if (before == '-') {
      return i > 1 && Character.isLetter(text.charAt(i - 2)) && Character.isLetter(after);
    }
    return before == ' ' && after != ' ' && after != '·' && !together(i);
  }

  /** Whether the words on both sides of the space before {@code i} belong together. */
  private boolean together(int i) {
    String left = wordBefore(i - 1);
    String right = wordAt(i);
    if (NUMBER.matcher(left).matches() && UNITS.contains(TAIL.matcher(right).replaceAll(""))) {
      return true;
    }
    if (MILES.matcher(left).matches() && CHAINS.matcher(right).matches()) {
      return true;
    }
    if (DATE.matcher(left).matches() && HOUR.matcher(right).matches()) {
      return true;
    }
    boolean ends = i + right.length() == text.length() || !Character.isDigit(end(right));
    if (Character.isLetter(end(left)) && LAST.matcher(right).matches() && ends) {
      return true;
    }
    boolean gradient = left.endsWith("1") && right.equals("in");
    boolean slope = left.equals("in") && wordBefore(i - 1 - left.length() - 1).endsWith("1");
    return ((gradient && left.length() <= 2) || slope)
        && Character.isDigit(digitAfter(i, gradient));
  }

  private static char end(String word) {
    return word.isEmpty() ? ' ' : word.charAt(word.length() - 1);
  }

  private char digitAfter(int i, boolean pastIn) {
    int first = pastIn ? i + 3 : i;
    return first < text.length() ? text.charAt(first) : ' ';
  }

  private String wordBefore(int end) {
    if (end <= 0) {
      return "";
    }
    int start = text.lastIndexOf(' ', end - 1) + 1;
    return text.substring(start, end);
  }

  private String wordAt(int start) {
    int end = text.indexOf(' ', start);
    return text.substring(start, end < 0 ? text.length() : end);
  }
}
