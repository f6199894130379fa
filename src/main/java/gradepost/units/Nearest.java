package gradepost.units;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that was probably meant, for a "Maybe …" line. */
public final class Nearest {
  private static final int LONGEST = 60;

  /** The nearest of {@code known} when it is near enough to be a slip of the hand. */
  public static Optional<String> to(String word, Collection<String> known) {
    if (word.length() > LONGEST) {
      return Optional.empty();
    }
    String folded = fold(word);
    String best = "";
    int bestDistance = Integer.MAX_VALUE;
    for (String candidate : known) {
      if (!digits(word).equals(digits(candidate))) {
        continue;
      }
      int distance = distance(folded, fold(candidate));
      if (distance < bestDistance && distance <= slips(candidate, word)) {
        best = candidate;
        bestDistance = distance;
      }
    }
    return bestDistance == Integer.MAX_VALUE ? Optional.empty() : Optional.of(best);
  }

  private static int slips(String candidate, String word) {
    boolean longer = word.length() > candidate.length();
    return candidate.length() <= 2 ? (longer ? 1 : 0) : Math.min(3, (candidate.length() + 1) / 3);
  }

  /** Another number is another thing, not a slip: platform 2 is not a misspelt platform 3. */
  private static String digits(String word) {
    return word.replaceAll("[^0-9]+", " ").strip();
  }

  private static String fold(String word) {
    return word.strip().toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
  }

  /** Edits between two words: insert, leave out, replace, or exchange two neighbours. */
  static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int replace = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(d[i - 1][j - 1] + replace, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }

  private Nearest() {}
}
