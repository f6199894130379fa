package gradepost.render.chart;

import gradepost.briefing.chart.RunChart;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.List;

/** Points of a run with their numbers beside them: white on the plan, black on a driven run. */
record NumberedPoints(Scale x, Scale y, LabelPlacer placer) {
  private static final double DISC = 4.6;

  void draw(Canvas canvas, List<RunChart.Point> points, boolean driven) {
    for (RunChart.Point p : points) {
      double px = x.at(p.atM());
      double py = y.at(p.speed());
      canvas.disc(px, py, 1.8, driven ? Ink.BLACK : Ink.PAPER, new Pen(0.8, Ink.BLACK));
      placer.place(wanted(px, py, driven)).ifPresent(box -> number(canvas, p, box, driven));
    }
  }

  /** Above a driven run and below the planned one first. */
  private static List<Box> wanted(double px, double py, boolean driven) {
    double size = 2 * DISC + 1;
    List<Box> wanted = new ArrayList<>();
    for (double far : new double[] {9, 15, 22, 30}) {
      for (double way : driven ? new double[] {1, -1} : new double[] {-1, 1}) {
        for (double side : new double[] {0, -0.7, 0.7}) {
          wanted.add(new Box(px + side * far - size / 2, py + way * far - size / 2, size, size));
        }
      }
    }
    return wanted;
  }

  private void number(Canvas canvas, RunChart.Point p, Box box, boolean driven) {
    double cx = box.x() + box.width() / 2;
    double cy = box.y() + box.height() / 2;
    canvas.line(x.at(p.atM()), y.at(p.speed()), cx, cy, new Pen(0.5, Ink.BLACK));
    canvas.disc(cx, cy, DISC, driven ? Ink.PALE : Ink.PAPER, new Pen(0.8, Ink.BLACK));
    canvas.text(cx, cy + 2.5, p.number(), new Canvas.Type(7, true), Anchor.MIDDLE);
  }
}
