package gradepost.render.chart;

import gradepost.briefing.chart.PressureChart;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.List;

/** Brake pressure against time. */
final class PressureDrawing implements Drawing {
  private static final double LEFT = 29;
  private static final double TOP = 6;
  private static final double PLOT = 58;
  private static final Canvas.Type SMALL = new Canvas.Type(7.6, false);
  private final PressureChart chart;
  private final Fonts fonts;

  PressureDrawing(PressureChart chart, Fonts fonts) {
    this.chart = chart;
    this.fonts = fonts;
  }

  @Override
  public double width() {
    return FULL_WIDTH;
  }

  @Override
  public double height() {
    return TOP + PLOT + 24;
  }

  @Override
  public void draw(Canvas canvas) {
    double[] times = chart.timesS();
    double last = times[times.length - 1];
    Scale x = new Scale(0, Math.max(10, last * 1.02), LEFT, FULL_WIDTH - 8);
    Scale y = new Scale(0, chart.topPressure(), TOP + PLOT, TOP);
    for (double v = 0; v <= chart.topPressure() + 1e-9; v += chart.pressureStep()) {
      canvas.line(LEFT, y.at(v), x.end(), y.at(v), Pen.GRID);
      if (v < chart.topPressure() - 1e-9) {
        canvas.text(
            LEFT - 3,
            y.at(v) + 2.6,
            Long.toString(Math.round(v)),
            new Canvas.Type(8, false),
            Anchor.END);
      }
    }
    canvas.text(LEFT - 3, TOP + 5, chart.pressureUnit(), new Canvas.Type(8, false), Anchor.END);
    canvas.line(LEFT, TOP, LEFT, TOP + PLOT, new Pen(0.8, Ink.BLACK));
    canvas.line(LEFT, TOP + PLOT, x.end(), TOP + PLOT, new Pen(0.8, Ink.BLACK));
    double step = x.to() > 60 ? 10 : 5;
    for (double t = 0; t <= x.to(); t += step) {
      canvas.line(x.at(t), TOP + PLOT, x.at(t), TOP + PLOT + 3, new Pen(0.8, Ink.BLACK));
      canvas.text(
          x.at(t),
          TOP + PLOT + 11,
          Long.toString(Math.round(t)),
          new Canvas.Type(8, false),
          Anchor.MIDDLE);
    }
    canvas.text(x.end(), TOP + PLOT + 21, chart.timeUnit(), new Canvas.Type(8, false), Anchor.END);
    canvas.line(x.at(times), y.at(chart.pressures()), new Pen(1.6, Ink.BLACK));
    LabelPlacer placer = new LabelPlacer(new Box(LEFT + 2, TOP, x.end() - LEFT, PLOT));
    double[] px = x.at(times);
    double[] py = y.at(chart.pressures());
    for (int i = 0; i + 1 < px.length; i++) {
      double length = Math.hypot(px[i + 1] - px[i], py[i + 1] - py[i]);
      int pieces = (int) Math.ceil(length / 4) + 1;
      for (int k = 0; k <= pieces; k++) {
        double share = (double) k / pieces;
        double ax = px[i] + share * (px[i + 1] - px[i]);
        double ay = py[i] + share * (py[i + 1] - py[i]);
        placer.take(new Box(ax - 1.5, ay - 1.5, 3, 3));
      }
    }
    Leaders leaders = new Leaders();
    for (PressureChart.Note note : chart.notes()) {
      note(canvas, placer, leaders, x.at(note.timeS()), y.at(note.pressure()), note.text());
    }
  }

  private void note(
      Canvas canvas, LabelPlacer placer, Leaders leaders, double x, double y, String text) {
    double width = fonts.width(text, SMALL);
    List<Box> wanted = new ArrayList<>();
    for (double dy : new double[] {-12, -22, 8, 18, -32, 28, 40, 52, 64, -44, -56}) {
      for (double dx : new double[] {6, 14, 26, 40, -width / 2, -width - 4, 60, 90}) {
        Box box = new Box(x + dx - 1, y + dy, width + 2, 9);
        if (leaders.clear(x, y, box)) {
          wanted.add(box);
        }
      }
    }
    placer
        .place(wanted)
        .ifPresent(
            b -> {
              leaders.draw(canvas, x, y, b);
              canvas.disc(x, y, 1.4, Ink.BLACK, new Pen(0.3, Ink.BLACK));
              canvas.text(b.x() + 1, b.y() + 7, text, SMALL, Anchor.START);
            });
  }
}
