package gradepost.pack;

import java.text.Normalizer;
import java.util.Locale;

/**
 * When two texts look the same on paper: however many blanks stand between their words, in capitals
 * or not, in full width or not, and with Cyrillic or Greek letters that nobody tells from Latin
 * ones. Capitals count: Cyrillic H and Latin H look alike, and so do their small letters here.
 */
public final class Lookalike {
  /** Small letters, each of which looks like the one of {@link #LATIN} as a capital, or small. */
  private static final String OTHERS = "авекмнорстухіјѕһԁԛԝӏɡαβεζηικμνορτυχı";

  private static final String LATIN = "abekmhopctyxijshdqwlgabezhikmnoptyxi";

  /** Whether two texts look the same. */
  public static boolean same(String one, String other) {
    return folded(one).equals(folded(other));
  }

  /** A text without what nobody sees of it. */
  public static String folded(String text) {
    StringBuilder out = new StringBuilder();
    plain(text)
        .toLowerCase(Locale.ROOT)
        .replaceAll("\\p{Cf}", "")
        .codePoints()
        .map(Lookalike::latin)
        .forEach(out::appendCodePoint);
    // A letter and the accent behind it may be one only now.
    return plain(out.toString()).replaceAll("\\s+", " ").strip();
  }

  private static String plain(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC);
  }

  private static int latin(int letter) {
    int at = OTHERS.indexOf(letter);
    return at < 0 ? letter : LATIN.charAt(at);
  }

  private Lookalike() {}
}
