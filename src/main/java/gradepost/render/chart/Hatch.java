package gradepost.render.chart;

import gradepost.render.chart.Canvas.Pen;

/** Slanting lines over a rectangle; those of neighbours join. */
final class Hatch {
  private Hatch() {}

  static void fill(
      Canvas canvas, double x, double y, double width, double height, double step, Pen pen) {
    double right = x + width;
    double bottom = y + height;
    for (double c = Math.ceil((x + y) / step) * step; c < right + bottom; c += step) {
      double x1 = Math.max(x, c - bottom);
      double x2 = Math.min(right, c - y);
      if (x2 > x1) {
        canvas.line(x1, c - x1, x2, c - x2, pen);
      }
    }
  }
}
