package gradepost.render.chart;

import gradepost.briefing.chart.Curve;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import java.util.stream.DoubleStream;

/** Slanting lines over a rectangle; those of neighbours join. */
final class Hatch {
  private Hatch() {}

  /** Above a line of level steps, two points each, up to the top of the plot. */
  static void above(Canvas canvas, Curve steps, Scale x, Scale y, double top) {
    double[] at = steps.x();
    double[] level = steps.y();
    for (int i = 0; i + 1 < at.length; i += 2) {
      double a = x.at(at[i]);
      double height = y.at(level[i]) - top;
      fill(canvas, a, top, x.at(at[i + 1]) - a, height, 4.5, new Pen(0.35, Ink.DARK));
    }
  }

  static void fill(
      Canvas canvas, double x, double y, double width, double height, double step, Pen pen) {
    double right = x + width;
    double bottom = y + height;
    DoubleStream.Builder across = DoubleStream.builder();
    DoubleStream.Builder down = DoubleStream.builder();
    for (double c = Math.ceil((x + y) / step) * step; c < right + bottom; c += step) {
      double x1 = Math.max(x, c - bottom);
      double x2 = Math.min(right, c - y);
      if (x2 > x1) {
        across.add(x1).add(x2);
        down.add(c - x1).add(c - x2);
      }
    }
    canvas.lines(across.build().toArray(), down.build().toArray(), pen);
  }
}
