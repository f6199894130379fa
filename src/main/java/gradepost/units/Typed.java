package gradepost.units;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A typed text, brought to plain characters: what keyboards and word processors make of it. */
final class Typed {
  private static final Pattern NUMBER = Pattern.compile("[+-]?(?:\\d{1,15}(?:\\.\\d{1,15})?)");
  private static final Pattern COMMA = Pattern.compile("(\\d),(\\d)");

  /** Spaces of every kind become one plain space; ², ‰ and the minus sign their plain spelling. */
  static String plain(String text) {
    return text.replaceAll("[\\s\\u00a0\\u2007\\u2009\\u202f]+", " ")
        .replace("²", "2")
        .replace('−', '-')
        .replace("‰", " permille")
        .replaceAll(" +", " ")
        .strip();
  }

  static boolean isNumber(String plain) {
    return NUMBER.matcher(plain).matches();
  }

  /** The text with a decimal point where a decimal comma stands. */
  static String withPoint(String plain) {
    Matcher matcher = COMMA.matcher(plain);
    return matcher.replaceAll("$1.$2");
  }

  /** A number without needless zeros, never in exponent form for what is met on a railway. */
  static String number(double value) {
    String text = String.format(Locale.ROOT, "%.6f", value);
    return text.replaceAll("\\.?0+$", "");
  }

  private Typed() {}
}
