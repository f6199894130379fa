package gradepost.briefing.page;

import gradepost.briefing.word.Words;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedEnd;
import gradepost.told.PrintedRung;
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

  /** What the brake is called that is left when the one of the plan fails; empty text: none. */
  static String next(PrintedCase on) {
    return on.ladder().stream()
        .map(PrintedRung::brake)
        .filter(b -> b.kind() != PrintedBrake.Kind.SERVICE)
        .findFirst()
        .map(PrintedBrake::called)
        .orElse("");
  }

  /** A place in a sentence: close to a target, so far before it. */
  String placeBefore(PrintedPlace place, PrintedTarget target) {
    return words.spelt(place, target.isStop() ? "where.before-mark" : "where.before-reduction");
  }
}
