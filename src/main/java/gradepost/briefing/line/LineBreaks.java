package gradepost.briefing.line;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Breaks the words of a row into lines before it is printed, so that its height is known: each
 * letter is taken as wide as it is printed, or wider. A quantity stays whole, and a number with the
 * word before it.
 */
public final class LineBreaks {
  /** From the space to the tilde, in thousandths of the type size; a test compares the faces. */
  private static final double[] REGULAR =
      widths(
          """
          200 289 426 497 497 824 609 249 303 303 418 497 249 311 249 350 497 497 497 497 497 497
          497 497 497 497 249 249 497 497 497 425 847 543 588 571 615 527 494 617 652 263 479 579
          486 727 647 664 566 664 569 534 536 645 515 786 513 476 539 303 350 303 497 500 542 504
          553 456 555 496 292 504 544 246 247 495 255 829 547 542 555 555 347 419 338 544 467 719
          446 467 425 303 241 303 497
          """);

  private static final double[] BOLD =
      widths(
          """
          200 340 537 528 528 857 667 300 344 344 457 528 300 332 300 350 528 528 528 528 528 528
          528 528 528 528 300 300 528 528 528 463 902 573 605 588 635 548 524 638 674 301 509 614
          518 762 665 684 596 684 613 556 556 665 556 813 567 525 541 344 350 344 528 500 555 527
          573 468 573 518 341 534 571 276 278 548 286 857 572 555 573 573 398 443 383 568 523 776
          514 521 460 344 268 344 528
          """);

  private static final int FIRST = ' ';

  /** A letter of which nothing is known; dashes of two and three letters apart. */
  private static final double WIDEST = 1.7;

  private static final String LONG_DASHES = "\u2e3a\u2e3b";
  private static final double LONGEST = 3;

  /** By how much an accent beside its letter widens it at the most. */
  private static final double ACCENT = 1.5;

  /** Of the columns with this type. */
  static final LineBreaks PLAIN = new LineBreaks(REGULAR);

  /** The same for bold type. */
  static final LineBreaks HEAVY = new LineBreaks(BOLD);

  private final double[] letters;

  private LineBreaks(double[] letters) {
    this.letters = letters;
  }

  private static double[] widths(String thousandths) {
    return Arrays.stream(thousandths.strip().split("\\s+", -1))
        .mapToDouble(w -> Integer.parseInt(w) / 1000.0)
        .toArray();
  }

  /** How many lines a text has at the most in a column that is so many type sizes wide. */
  public static int lines(String text, boolean bold, double columnEm) {
    return (bold ? HEAVY : PLAIN).of(text, columnEm).size();
  }

  /** As much as a text takes at the most, in type sizes. */
  public static double width(String text, boolean bold) {
    return (bold ? HEAVY : PLAIN).width(text);
  }

  private double width(String text) {
    return text.codePoints().mapToDouble(this::width).sum();
  }

  private double width(int letter) {
    if (plain(letter)) {
      return letters[letter - FIRST];
    }
    int base = Normalizer.normalize(Character.toString(letter), Normalizer.Form.NFD).codePointAt(0);
    if (plain(base)) {
      return ACCENT * letters[base - FIRST];
    }
    return LONG_DASHES.indexOf(letter) < 0 ? WIDEST : LONGEST;
  }

  private static boolean plain(int letter) {
    return letter >= FIRST && letter < FIRST + BOLD.length;
  }

  /** The lines of a text in a column that is so many type sizes wide. */
  List<String> of(String text, double columnEm) {
    List<String> out = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words(text, columnEm)) {
      if (line.length() > 0 && width(line + " " + word) > columnEm) {
        out.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() > 0 ? " " : "").append(word);
    }
    out.add(line.toString());
    return out;
  }

  /** What stays together; of more than a line's width, word for word or letter for letter. */
  private List<String> words(String text, double columnEm) {
    List<String> out = new ArrayList<>();
    for (String whole : together(text)) {
      if (width(whole) <= columnEm) {
        out.add(whole);
      } else {
        for (String word : whole.split(" ", -1)) {
          out.addAll(letters(word, columnEm));
        }
      }
    }
    return out;
  }

  private List<String> letters(String word, double columnEm) {
    List<String> out = new ArrayList<>();
    StringBuilder piece = new StringBuilder();
    for (int letter : word.codePoints().toArray()) {
      if (piece.length() > 0 && width(piece + Character.toString(letter)) > columnEm) {
        out.add(piece.toString());
        piece.setLength(0);
      }
      piece.appendCodePoint(letter);
    }
    out.add(piece.toString());
    return out;
  }

  private static List<String> together(String text) {
    List<String> out = new ArrayList<>();
    String[] words = text.split(" ", -1);
    StringBuilder whole = new StringBuilder(words[0]);
    for (int i = 1; i < words.length; i++) {
      if (joined(words[i - 1], words[i])) {
        whole.append(' ').append(words[i]);
      } else {
        out.add(whole.toString());
        whole = new StringBuilder(words[i]);
      }
    }
    out.add(whole.toString());
    return out;
  }

  private static boolean joined(String before, String after) {
    boolean figure = !before.isEmpty() && Character.isDigit(before.charAt(before.length() - 1));
    boolean unit = !after.isEmpty() && Character.isLetter(after.charAt(0)) && after.length() < 6;
    boolean counted = !after.isEmpty() && Character.isDigit(after.charAt(0));
    boolean named =
        !before.isEmpty() && Character.isLetterOrDigit(before.charAt(before.length() - 1));
    return (figure && unit) || (counted && named);
  }
}
