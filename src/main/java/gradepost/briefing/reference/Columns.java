package gradepost.briefing.reference;

import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.List;

/** Short tables in two columns, block after block, so that a block stands whole on a page. */
final class Columns {
  /** Lines of a column of a block, at most: a page holds some four blocks. */
  private static final int MOST = 14;

  /** A table's heading and the air below it, in lines. */
  private static final int HEADING = 2;

  /** The blocks of these tables, in their order. */
  static List<ReferenceSheet.Block> of(List<Table> tables) {
    List<ReferenceSheet.Block> out = new ArrayList<>();
    int from = 0;
    while (from < tables.size()) {
      int to = from + 1;
      while (to < tables.size() && height(tables.subList(from, to + 1)) <= MOST) {
        to++;
      }
      List<Table> block = tables.subList(from, to);
      int left = left(block);
      out.add(new ReferenceSheet.Beside(block.subList(0, left), block.subList(left, block.size())));
      from = to;
    }
    return out;
  }

  /** How many stand on the left for the lowest block. */
  private static int left(List<Table> tables) {
    int best = tables.size();
    for (int left = tables.size(); left > 0; left--) {
      if (height(tables, left) <= height(tables, best)) {
        best = left;
      }
    }
    return best;
  }

  private static int height(List<Table> tables) {
    return height(tables, left(tables));
  }

  private static int height(List<Table> tables, int left) {
    return Math.max(lines(tables.subList(0, left)), lines(tables.subList(left, tables.size())));
  }

  private static int lines(List<Table> tables) {
    return tables.stream().mapToInt(t -> HEADING + t.rows().size()).sum();
  }

  private Columns() {}
}
