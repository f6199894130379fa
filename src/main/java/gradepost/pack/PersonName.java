package gradepost.pack;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * When two spellings name one person. This is the one rule, for whoever may not act twice:
 * capitals, spaces, full stops and other marks do not tell people apart, nor do letters that look
 * the same, nor does a surname that comes first with a comma behind it. A missing or an added word
 * does: "A Clerk" may be another than "Ann Clerk".
 */
public final class PersonName {
  private static final Pattern SURNAME_FIRST = Pattern.compile("([^,]+),([^,]+)");

  /** Letters of initials that are written apart. */
  private static final Pattern INITIALS = Pattern.compile("(?<=\\b\\p{L}) (?=\\p{L}\\b)");

  /** Whether two spellings name one person. */
  public static boolean same(String one, String other) {
    return folded(one).equals(folded(other));
  }

  /** A name without what two spellings of it may differ in. */
  public static String folded(String name) {
    String whole = Lookalike.folded(name);
    Matcher turned = SURNAME_FIRST.matcher(whole);
    if (turned.matches()) {
      whole = turned.group(2) + " " + turned.group(1);
    }
    String words =
        whole
            .replaceAll("['\u2018\u2019\u02BC]", "")
            .replaceAll("[^\\p{L}\\p{M}\\p{N}]+", " ")
            .strip();
    return INITIALS.matcher(words).replaceAll("");
  }

  private PersonName() {}
}
