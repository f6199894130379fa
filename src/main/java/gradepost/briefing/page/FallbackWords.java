package gradepost.briefing.page;

import gradepost.briefing.word.Words;
import gradepost.told.PrintedEnd;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedPlace;

/** What answers and ladders have in common, spelt. */
final class FallbackWords {
  private final Words words;

  FallbackWords(Words words) {
    this.words = words;
  }

  /** How far from the target a braking ends, whichever side. */
  static PrintedLength by(PrintedEnd end) {
    return end.match(
        PrintedEnd.ShortBy::by,
        PrintedEnd.PastBy::by,
        nowhere -> {
          throw new IllegalArgumentException("it ends nowhere: " + nowhere);
        });
  }

  /** A place in a sentence: close to a target, so far before it. */
  String placeBefore(PrintedPlace place, PrintedTarget target) {
    return words.spelt(place, target.isStop() ? "where.before-mark" : "where.before-reduction");
  }
}
