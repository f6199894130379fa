package gradepost.render.chart;

import gradepost.briefing.chart.Chart.HeldBand;
import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.RunChart;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Speed across a sheet of the line against distance down it. */
final class LineSpeeds {
  private static final Canvas.Type FIGURE = new Canvas.Type(9, true);
  private static final double HIGH = 8.5;

  private final LineChart chart;
  private final Scale x;
  private final Scale y;
  private final Fonts fonts;

  LineSpeeds(LineChart chart, Scale x, Scale y, Fonts fonts) {
    this.chart = chart;
    this.x = x;
    this.y = y;
    this.fonts = fonts;
  }

  double x(double speed) {
    return x.at(speed);
  }

  void draw(Canvas canvas) {
    Box plot = new Box(x.start(), y.start(), x.end() - x.start(), y.end() - y.start());
    LabelPlacer placer = new LabelPlacer(plot);
    for (double v = chart.speedStep(); v < chart.topSpeed() - 1e-9; v += chart.speedStep()) {
      canvas.line(x.at(v), y.start(), x.at(v), y.end(), Pen.GRID);
    }
    canvas.clip(plot.x(), plot.y(), plot.width(), plot.height());
    hatches(canvas);
    held(canvas);
    steps(canvas, placer);
    Curve run = chart.planned();
    if (run.x().length > 1) {
      canvas.line(x.at(run.y()), y.at(run.x()), ApproachDrawing.pen(run.kind()));
    }
    canvas.unclip();
    List<RunChart.Point> turned =
        chart.points().stream()
            .map(p -> new RunChart.Point(p.number(), /* atM= */ p.speed(), /* speed= */ p.atM()))
            .toList();
    turned.forEach(p -> placer.take(new Box(x.at(p.atM()) - 2, y.at(p.speed()) - 2, 4, 4)));
    new NumberedPoints(x, y, placer).draw(canvas, turned, false);
    figures(canvas, placer);
  }

  private void hatches(Canvas canvas) {
    for (LineChart.Step s : chart.permissible()) {
      double v = x.at(s.speed());
      double top = y.at(s.fromM());
      double high = y.at(s.toM()) - top;
      Hatch.fill(canvas, v, top, x.end() - v, high, 4.5, new Pen(0.35, Ink.DARK));
      if (s.temporary()) {
        Hatch.fill(canvas, x.start(), top, v - x.start(), high, 2.2, new Pen(0.35, Ink.BLACK));
      }
    }
  }

  private void held(Canvas canvas) {
    for (HeldBand band : chart.held()) {
      double left = x.at(band.lower());
      double right = x.at(band.upper());
      for (double at = y.at(band.fromM()); at < y.at(band.toM()); at += 2.6) {
        canvas.line(left, at, right, at, new Pen(0.35, Ink.BLACK));
      }
      for (double edge : new double[] {left, right}) {
        canvas.line(edge, y.at(band.fromM()), edge, y.at(band.toM()), new Pen(0.9, Ink.BLACK));
      }
    }
  }

  private void steps(Canvas canvas, LabelPlacer placer) {
    int n = chart.permissible().size();
    double[] px = new double[2 * n];
    double[] py = new double[2 * n];
    for (int i = 0; i < n; i++) {
      LineChart.Step s = chart.permissible().get(i);
      px[2 * i] = x.at(s.speed());
      px[2 * i + 1] = px[2 * i];
      py[2 * i] = y.at(s.fromM());
      py[2 * i + 1] = y.at(s.toM());
    }
    if (n > 0) {
      canvas.line(px, py, new Pen(2, Ink.BLACK));
    }
    for (int i = 0; i + 1 < px.length; i++) {
      double left = Math.min(px[i], px[i + 1]) - 1;
      double top = Math.min(py[i], py[i + 1]) - 1;
      placer.take(
          new Box(left, top, Math.abs(px[i + 1] - px[i]) + 2, Math.abs(py[i + 1] - py[i]) + 2));
    }
  }

  /** Every step has its figure: beside it where there is room, else with a hair to it. */
  private void figures(Canvas canvas, LabelPlacer placer) {
    for (LineChart.Step s : chart.permissible()) {
      if (s.text().isEmpty()) {
        continue;
      }
      double width = fonts.width(s.text(), FIGURE) + 3;
      double v = x.at(s.speed());
      double top = y.at(s.fromM());
      double middle = (top + y.at(s.toM())) / 2;
      List<Box> wanted = new ArrayList<>();
      for (double at : new double[] {middle - HIGH / 2, top + 2, y.at(s.toM()) - HIGH - 2}) {
        wanted.add(new Box(v + 2, at, width, HIGH));
        wanted.add(new Box(v - width - 2, at, width, HIGH));
      }
      Box box =
          placer
              .place(wanted)
              .or(() -> placer.place(anywhere(v, middle, width)))
              .orElse(wanted.get(0));
      if (box.y() > middle || box.y() + box.height() < middle) {
        double far = box.x() > v ? box.x() : box.x() + box.width();
        canvas.line(v, middle, far, box.y() + box.height() / 2, Pen.HAIR);
      }
      canvas.box(box.x(), box.y(), box.width(), box.height(), Ink.PAPER);
      canvas.text(box.x() + 1.5, box.y() + 7.2, s.text(), FIGURE, Anchor.START);
    }
  }

  private List<Box> anywhere(double v, double middle, double width) {
    List<Box> all = new ArrayList<>();
    for (double left = x.start() + 1; left + width <= x.end(); left += 3) {
      for (double top = y.start(); top + HIGH <= y.end(); top += 3) {
        all.add(new Box(left, top, width, HIGH));
      }
    }
    all.sort(Comparator.comparingDouble(b -> Math.hypot(b.x() - v, b.y() - middle)));
    return all;
  }
}
