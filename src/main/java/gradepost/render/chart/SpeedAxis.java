package gradepost.render.chart;

import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Pen;

/** The lines of speed across a plot, their figures, and above these the unit. */
final class SpeedAxis {
  private static final Canvas.Type TYPE = new Canvas.Type(8, false);

  /** How far below the top of a flat plot a figure would run into the unit. */
  private static final double UNIT = 9;

  /** Left of the plot. */
  private static final double GAP = 3;

  private SpeedAxis() {}

  /**
   * Draws them over a plot that begins at this place and ends at {@code right}.
   *
   * @param step between two lines, km/h or mph, as is {@code most}, the top of the plot
   */
  static void draw(
      Canvas canvas,
      double left,
      double top,
      double right,
      Scale y,
      double most,
      double step,
      String unit) {
    for (double v = 0; v <= most + 1e-9; v += step) {
      canvas.line(left, y.at(v), right, y.at(v), Pen.GRID);
      boolean free = v == 0 || y.at(v) > top + UNIT;
      if (free && v < most - 1e-9) {
        String figure = Long.toString(Math.round(v));
        canvas.text(left - GAP, y.at(v) + 2.6, figure, TYPE, Anchor.END);
      }
    }
    canvas.text(left - GAP, top + 5, unit, TYPE, Anchor.END);
  }
}
