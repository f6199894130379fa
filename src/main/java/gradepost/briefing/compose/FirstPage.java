package gradepost.briefing.compose;

import gradepost.briefing.Change;
import gradepost.briefing.Cover;
import gradepost.briefing.Fact;
import java.util.List;

/**
 * How many changes the first page has room for: eight lines at most, and less where its other
 * contents leave less. Heights are counted in lines of ten points, by the letters that a line of
 * each kind holds; they are estimates, on the high side, of what the style sheet makes of them.
 */
final class FirstPage {
  private static final int MOST_CHANGES = 8;
  private static final double PAGE = 64;

  /** Headings, rules and boxes; the line about the reference. */
  private static final double FRAME = 16;

  private static final int WIDE = 95;
  private static final int HALF = 46;
  private static final double HEADING = 2.6;
  private static final int HEADING_LETTERS = 36;
  private static final double DIRECTION = 1.4;
  private static final int DIRECTION_LETTERS = 76;
  private static final double RISK = 1.25;
  private static final double SHEET = 1.1;
  private static final double FACT = 1.1;
  private static final double CODE = 6.5;

  /** How many of the changes stand on the first page, the first ones. */
  static int roomFor(Cover cover, List<Change> changes) {
    double room = Math.min(MOST_CHANGES, PAGE - used(cover));
    int here = 0;
    for (Change change : changes) {
      room -= lines(change.kind() + change.place() + change.text(), WIDE);
      if (room < 0) {
        return here;
      }
      here++;
    }
    return here;
  }

  private static double used(Cover cover) {
    double left = facts(cover.train(), HALF) + facts(cover.checked(), HALF);
    double right = facts(cover.issue(), HALF) + CODE;
    return FRAME
        + HEADING * lines(cover.heading(), HEADING_LETTERS)
        + DIRECTION * texts(cover.directions(), DIRECTION_LETTERS)
        + RISK * cover.highRisk().stream().mapToInt(r -> lines(r.item() + r.place(), WIDE)).sum()
        + SHEET * cover.contents().stream().mapToInt(e -> lines(e.title(), HALF)).sum() / 2
        + facts(cover.edition(), WIDE)
        + FACT * lines(cover.restrictions().toString(), WIDE)
        + Math.max(left + texts(cover.sources(), HALF), right)
        + texts(cover.cautions(), WIDE);
  }

  private static int texts(List<String> texts, int letters) {
    return texts.stream().mapToInt(t -> lines(t, letters)).sum();
  }

  private static double facts(List<Fact> facts, int letters) {
    return FACT * facts.stream().mapToInt(f -> lines(f.label() + f.value(), letters)).sum();
  }

  private static int lines(String text, int letters) {
    return text.length() / letters + 1;
  }

  private FirstPage() {}
}
