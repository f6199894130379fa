package gradepost.briefing.reference;

import gradepost.briefing.ReferenceSheet;
import gradepost.briefing.Table;
import java.util.ArrayList;
import java.util.List;

/** Short tables in two columns, block after block, so that a block stands whole on a page. */
final class Columns {
  /** Lines of a column of a block, at most: a page holds some three blocks. */
  private static final int MOST = 18;

  /** A table's heading and the air below it, in lines. */
  private static final int HEADING = 2;

  /** The blocks of these tables, in their order: as low as may be all together. */
  static List<ReferenceSheet.Block> of(List<Table> tables) {
    int[] lines = new int[tables.size() + 1];
    int[] begins = new int[tables.size() + 1];
    for (int to = 1; to <= tables.size(); to++) {
      lines[to] = Integer.MAX_VALUE;
      for (int from = to - 1; from >= 0; from--) {
        int height = height(tables.subList(from, to));
        boolean may = height <= MOST || from == to - 1;
        if (may && lines[from] + height < lines[to]) {
          lines[to] = lines[from] + height;
          begins[to] = from;
        }
      }
    }
    List<ReferenceSheet.Block> out = new ArrayList<>();
    for (int to = tables.size(); to > 0; to = begins[to]) {
      List<Table> block = tables.subList(begins[to], to);
      int left = left(block);
      out.add(
          0, new ReferenceSheet.Beside(block.subList(0, left), block.subList(left, block.size())));
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
