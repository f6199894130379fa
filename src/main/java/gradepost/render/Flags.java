package gradepost.render;

import gradepost.render.Canvas.Anchor;
import gradepost.render.Canvas.Pen;
import gradepost.render.Canvas.Type;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Names that hang from places on an axis, in as many rows as they need: a name never runs into
 * another, and no leader runs through a name.
 */
final class Flags {
  /** A name to hang. */
  record Flag(double x, String text, boolean bold) {}

  private record Hung(Flag flag, int row, double left, double width, boolean toLeft) {}

  static final double ROW = 9.2;
  private static final double SIZE = 7.4;
  private static final double GAP = 4;
  private final List<Hung> hung = new ArrayList<>();
  private int rows;

  Flags(List<Flag> flags, double left, double right, Fonts fonts) {
    List<Flag> order = new ArrayList<>(flags);
    order.sort(Comparator.comparingDouble(Flag::x).reversed());
    for (Flag flag : order) {
      hang(flag, left, right, fonts.width(flag.text(), type(flag)) + 2);
    }
  }

  private static Type type(Flag flag) {
    return new Type(SIZE, flag.bold());
  }

  private void hang(Flag flag, double left, double right, double width) {
    boolean preferLeft = flag.x() + width > right;
    for (int row = 0; row <= rows; row++) {
      for (boolean toLeft : new boolean[] {preferLeft, !preferLeft}) {
        double start = toLeft ? flag.x() - width : flag.x();
        boolean fits = start >= left - 1 && start + width <= right + 1;
        if ((fits || row == rows) && fitsAt(start, width, flag.x(), row)) {
          put(flag, row, Math.max(left, Math.min(start, right - width)), width, toLeft);
          return;
        }
      }
    }
    double start = preferLeft ? flag.x() - width : flag.x();
    put(flag, rows, Math.max(left, Math.min(start, right - width)), width, preferLeft);
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
      if (h.toLeft) {
        canvas.text(h.left + h.width - 2, base, h.flag.text(), type(h.flag), Anchor.END);
      } else {
        canvas.text(h.left + 2, base, h.flag.text(), type(h.flag), Anchor.START);
      }
    }
  }
}
