package gradepost.app.author;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import java.util.ArrayList;
import java.util.List;

/** Two texts side by side, line by line; what they have in common is left out but for a little. */
public final class Sides {
  private static final int AROUND = 3;

  /** What a row shows. */
  public enum Kind {
    SAME,
    /** Both have other words there. */
    OTHER,
    LEFT_ALONE,
    RIGHT_ALONE,
    /** So many lines that are the same are not shown. */
    LEFT_OUT
  }

  /**
   * A row.
   *
   * @param leftLine counted from 1; 0 where the left text has no line there
   * @param rightLine the same of the right text; how many lines they are where they are left out
   */
  public record Row(Kind kind, int leftLine, String left, int rightLine, String right) {}

  /** The rows of two texts; none where they are the same. */
  public static List<Row> of(String left, String right) {
    List<String> before = lines(left);
    List<String> after = lines(right);
    List<Row> rows = new ArrayList<>();
    int at = 0;
    int other = 0;
    for (AbstractDelta<String> delta : DiffUtils.diff(before, after).getDeltas()) {
      int from = delta.getSource().getPosition();
      same(rows, before, at, from, other - at, rows.isEmpty(), false);
      List<String> gone = delta.getSource().getLines();
      List<String> come = delta.getTarget().getLines();
      other = delta.getTarget().getPosition();
      for (int i = 0; i < Math.max(gone.size(), come.size()); i++) {
        boolean l = i < gone.size();
        boolean r = i < come.size();
        rows.add(
            new Row(
                l && r ? Kind.OTHER : l ? Kind.LEFT_ALONE : Kind.RIGHT_ALONE,
                l ? from + i + 1 : 0,
                l ? gone.get(i) : "",
                r ? other + i + 1 : 0,
                r ? come.get(i) : ""));
      }
      at = from + gone.size();
      other += come.size();
    }
    if (!rows.isEmpty()) {
      same(rows, before, at, before.size(), other - at, false, true);
    }
    return rows;
  }

  private static void same(
      List<Row> rows,
      List<String> lines,
      int from,
      int to,
      int shift,
      boolean first,
      boolean last) {
    int head = first ? 0 : AROUND;
    int tail = last ? 0 : AROUND;
    boolean cut = to - from > head + tail + 1;
    for (int i = from; i < to; i++) {
      if (!cut || i < from + head || i >= to - tail) {
        rows.add(new Row(Kind.SAME, i + 1, lines.get(i), i + 1 + shift, lines.get(i)));
      } else if (i == from + head) {
        rows.add(new Row(Kind.LEFT_OUT, 0, "", to - from - head - tail, ""));
      }
    }
  }

  private static List<String> lines(String text) {
    return List.of(text.split("\n", -1));
  }

  private Sides() {}
}
