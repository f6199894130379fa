package gradepost.render.chart;

import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Pen;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Names that hang from places on an axis, in as many rows as they need: a name never runs into
 * another, and no leader runs through a name. Where they would need too many rows, the least
 * weighty are left out: the sheets of the line have them all.
 */
final class Flags {
  /** A name to hang. */
  record Flag(double x, String text, boolean bold, int weight) {}

  private record Hung(Flag flag, int row, double left, double width, boolean toLeft) {}

  static final double ROW = 9.2;
  private static final int MOST_ROWS = 4;

  /** Of this weight none is left out. */
  private static final int MUST = 3;

  private static final double SIZE = 7.4;
  private static final double GAP = 4;
  private final List<Hung> hung = new ArrayList<>();
  private final double left;
  private final double right;
  private final Fonts fonts;
  private int rows;
  private int crossings;

  private Flags(double left, double right, Fonts fonts) {
    this.left = left;
    this.right = right;
    this.fonts = fonts;
  }

  static Flags of(List<Flag> flags, double left, double right, Fonts fonts) {
    Flags hung = clearest(flags, left, right, fonts);
    while (hung.rows > MOST_ROWS || hung.crossings > 0) {
      Optional<Flags> fewer = hung.clearestWithoutOne();
      if (fewer.isEmpty()) {
        return hung;
      }
      hung = fewer.get();
    }
    return hung;
  }

  /** Without one of the least weighty, that in whose absence the others hang clearest. */
  private Optional<Flags> clearestWithoutOne() {
    int least = hung.stream().mapToInt(h -> h.flag.weight()).min().orElse(MUST);
    return hung.stream()
        .filter(h -> h.flag.weight() == least && least < MUST)
        .sorted(Comparator.comparingInt(Hung::row).reversed())
        .map(h -> clearest(without(h.flag), left, right, fonts))
        .min(
            Comparator.comparingInt((Flags f) -> f.crossings)
                .thenComparingInt(f -> Math.max(f.rows, MOST_ROWS)));
  }

  private List<Flag> without(Flag flag) {
    List<Flag> others = new ArrayList<>(hung.stream().map(Hung::flag).toList());
    others.remove(flag);
    return others;
  }

  /** Hangs them in two ways and keeps the clearer one. */
  private static Flags clearest(List<Flag> flags, double left, double right, Fonts fonts) {
    List<Flag> order = new ArrayList<>(flags);
    order.sort(Comparator.comparingDouble(Flag::x).reversed());
    Flags edgeFirst = new Flags(left, right, fonts);
    Flags edgeLast = new Flags(left, right, fonts);
    order.forEach(edgeFirst::hang);
    order.stream().filter(f -> !edgeLast.atEdge(f)).forEach(edgeLast::hang);
    order.stream().filter(edgeLast::atEdge).forEach(edgeLast::hang);
    boolean last =
        edgeLast.crossings < edgeFirst.crossings
            || (edgeLast.crossings == edgeFirst.crossings && edgeLast.rows < edgeFirst.rows);
    return last ? edgeLast : edgeFirst;
  }

  private double width(Flag flag) {
    return fonts.width(flag.text(), type(flag)) + 2;
  }

  private boolean atEdge(Flag flag) {
    return flag.x() + width(flag) > right;
  }

  private static Canvas.Type type(Flag flag) {
    return new Canvas.Type(SIZE, flag.bold());
  }

  private void hang(Flag flag) {
    double width = width(flag);
    boolean edge = atEdge(flag);
    for (boolean toLeft : new boolean[] {edge, !edge}) {
      double start = toLeft ? flag.x() - width : flag.x();
      if (start < left - 1 || start + width > right + 1) {
        continue;
      }
      for (int row = 0; row <= rows; row++) {
        if (fitsAt(start, width, flag.x(), row)) {
          put(flag, row, start, width, toLeft);
          return;
        }
      }
    }
    crossings++;
    double start = edge ? flag.x() - width : flag.x();
    put(flag, rows, Math.max(left, Math.min(start, right - width)), width, edge);
  }

  private boolean fitsAt(double start, double width, double leader, int row) {
    for (Hung h : hung) {
      boolean besides = h.left >= start + width + GAP || h.left + h.width + GAP <= start;
      if (h.row == row && !besides) {
        return false;
      }
      if (h.row > row && h.flag.x() > start - 1 && h.flag.x() < start + width + 1) {
        return false;
      }
      if (h.row < row && leader > h.left - 1 && leader < h.left + h.width + 1) {
        return false;
      }
    }
    return true;
  }

  private void put(Flag flag, int row, double left, double width, boolean toLeft) {
    hung.add(new Hung(flag, row, left, width, toLeft));
    rows = Math.max(rows, row + 1);
  }

  double height() {
    return rows * ROW + (rows > 0 ? 3 : 0);
  }

  void draw(Canvas canvas, double top) {
    for (Hung h : hung) {
      canvas.line(h.flag.x(), top, h.flag.x(), top + h.row * ROW + 9, Pen.HAIR);
    }
    for (Hung h : hung) {
      double base = top + h.row * ROW + 8.4;
      double side = h.toLeft ? -1.2 : 1.2;
      canvas.box(h.left + side, base - 6.6, h.width - 1.2, 8, Canvas.Ink.PAPER);
      if (h.toLeft) {
        canvas.text(h.left + h.width - 2, base, h.flag.text(), type(h.flag), Anchor.END);
      } else {
        canvas.text(h.left + 2, base, h.flag.text(), type(h.flag), Anchor.START);
      }
    }
  }
}
