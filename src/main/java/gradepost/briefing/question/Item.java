package gradepost.briefing.question;

import gradepost.policy.Subject;
import java.util.List;

/**
 * Something that can be asked.
 *
 * @param of what it is asked of, by name: a station, a signal, an approach; may be empty text
 * @param atM the place that is asked about, distance run in metres; NaN where it has none
 * @param right the one right answer
 * @param near wrong answers, the nearest first; three at least
 * @param taught where the briefing teaches it
 */
public record Item(
    Subject subject,
    String of,
    double atM,
    String ask,
    String right,
    List<String> near,
    Reference taught) {

  /**
   * Where the briefing teaches it: the anchor of a sheet, of a table, or of a row of the sheets of
   * the line, and what to look at there.
   */
  public record Reference(String anchor, String what) {
    /** The anchor of what changed, which begins on the first page. */
    public static final String CHANGES = "changes";

    private static final String LINE = "@";

    /** What stands for all sheets of the line of a part, with a hole for its identity. */
    public static final String LINE_SHEETS = "%s-line";

    /** The anchor of the row for a place. */
    public static String line(String sheet, String place) {
      return sheet + LINE + place;
    }

    /** The sheet that holds the row; the anchor itself where it is of no row. */
    public String sheet() {
      int at = anchor.indexOf(LINE);
      return at < 0 ? anchor : anchor.substring(0, at);
    }
  }

  public Item {
    near = List.copyOf(near);
    if (near.size() < Distractors.WRONG || near.contains(right)) {
      throw new IllegalArgumentException("three wrong answers to: " + ask);
    }
  }
}
