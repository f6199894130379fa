package gradepost.render;

import gradepost.briefing.ApproachChart;
import gradepost.briefing.Curve;
import gradepost.briefing.TrackStrip;
import gradepost.render.Canvas.Anchor;
import gradepost.render.Canvas.Ink;
import gradepost.render.Canvas.Pen;
import gradepost.render.Canvas.Type;
import gradepost.render.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.List;

/** Speed against distance to a target, over the track. */
final class ApproachDrawing implements Drawing {
  private static final double LEFT = 29;
  private static final double RIGHT = 6;
  private static final double TOP = 5;
  private static final double PLOT = 106;
  private final ApproachChart chart;
  private final Fonts fonts;
  private final Scale x;
  private final Scale y;
  private final TrackBands bands;

  ApproachDrawing(ApproachChart chart, Fonts fonts) {
    this.chart = chart;
    this.fonts = fonts;
    TrackStrip track = chart.track();
    this.x = new Scale(track.fromM(), track.toM(), LEFT, FULL_WIDTH - RIGHT);
    this.y = new Scale(0, chart.topSpeed(), TOP + PLOT, TOP);
    this.bands = new TrackBands(track, x, fonts, FULL_WIDTH - 1);
  }

  @Override
  public double width() {
    return FULL_WIDTH;
  }

  @Override
  public double height() {
    return TOP
        + PLOT
        + TrackBands.AXIS
        + bands.flagsHeight()
        + TrackBands.PROFILE
        + TrackBands.CURVES
        + TrackBands.LINE
        + 2;
  }

  @Override
  public void draw(Canvas canvas) {
    double bottom = TOP + PLOT;
    grid(canvas, bottom);
    canvas.clip(LEFT, TOP, x.end() - LEFT, PLOT + 1);
    chart.curves().stream()
        .filter(c -> c.kind() == Curve.Kind.PERMISSIBLE)
        .forEach(c -> hatch(canvas, c));
    for (Curve c : chart.curves()) {
      canvas.line(x.at(c.x()), y.at(c.y()), pen(c.kind()));
    }
    canvas.unclip();
    double target = x.at(chart.targetM());
    Pen mark = new Pen(1.1, Ink.BLACK, 5, 2, 1, 2);
    canvas.line(target, TOP, target, bottom, mark);
    double under = bottom + TrackBands.AXIS + bands.flagsHeight();
    canvas.line(target, under, target, height() - 2, mark);
    LabelPlacer placer = new LabelPlacer(new Box(LEFT, TOP, x.end() - LEFT, PLOT));
    placer.take(new Box(target - 1, TOP, 2, PLOT));
    List<Runnable> rings = pins(canvas, placer);
    new LineLabels(chart, x, y, fonts, placer).draw(canvas);
    rings.forEach(Runnable::run);
    bands.axis(canvas, bottom);
    double top = bottom + TrackBands.AXIS;
    bands.flags(canvas, top);
    top += bands.flagsHeight();
    bands.profile(canvas, top);
    top += TrackBands.PROFILE;
    bands.curves(canvas, top);
    top += TrackBands.CURVES;
    bands.line(canvas, top);
  }

  private void grid(Canvas canvas, double bottom) {
    Type type = new Type(8, false);
    for (double v = 0; v <= chart.topSpeed() + 1e-9; v += chart.speedStep()) {
      canvas.line(LEFT, y.at(v), x.end(), y.at(v), Pen.GRID);
      if (v > 0 && v < chart.topSpeed() - 1e-9 || v == 0) {
        canvas.text(LEFT - 3, y.at(v) + 2.6, Long.toString(Math.round(v)), type, Anchor.END);
      }
    }
    canvas.text(LEFT - 3, TOP + 5, chart.speedUnit(), type, Anchor.END);
    for (TrackStrip.Tick tick : chart.track().ticks()) {
      double at = x.at(tick.atM());
      canvas.line(at, TOP, at, bottom, Pen.GRID);
    }
    canvas.line(LEFT, TOP, LEFT, bottom, new Pen(0.8, Ink.BLACK));
  }

  private void hatch(Canvas canvas, Curve c) {
    double[] cx = c.x();
    double[] cy = c.y();
    for (int i = 0; i + 1 < cx.length; i += 2) {
      double a = x.at(cx[i]);
      double b = x.at(cx[i + 1]);
      Hatch.fill(canvas, a, TOP, b - a, y.at(cy[i]) - TOP, 4.5, new Pen(0.35, Ink.DARK));
    }
  }

  static Pen pen(Curve.Kind kind) {
    return switch (kind) {
      case PERMISSIBLE -> new Pen(2.4, Ink.BLACK);
      case PLANNED -> new Pen(1.5, Ink.BLACK);
      case SERVICE -> new Pen(1, Ink.BLACK, 9, 3);
      case FALLBACK -> new Pen(1, Ink.BLACK, 4, 2.2);
      case EMERGENCY -> new Pen(1.1, Ink.BLACK, 1.2, 2);
      case DRIVEN -> new Pen(1.9, Ink.BLACK);
    };
  }

  /** Strokes to the rings, and the rings: to be drawn when no stroke can run through one. */
  private List<Runnable> pins(Canvas canvas, LabelPlacer placer) {
    double r = 5.4;
    List<Runnable> rings = new ArrayList<>();
    for (ApproachChart.Pin pin : chart.pins()) {
      placer.take(new Box(x.at(pin.atM()) - 1.5, y.at(pin.speed()) - 1.5, 3, 3));
    }
    for (ApproachChart.Pin pin : chart.pins()) {
      double px = x.at(pin.atM());
      double py = y.at(pin.speed());
      List<Box> wanted = new ArrayList<>();
      double size = 2 * r + 1.4;
      for (double far : new double[] {12, 20, 28, 36, 46, 58}) {
        for (double[] way :
            new double[][] {
              {-0.45, 0.9}, {0, 1}, {-0.8, 0.6}, {0.5, -0.9}, {0, -1}, {-1, 0}, {1, 0}
            }) {
          double cx = px + way[0] * far;
          double cy = py + way[1] * far;
          wanted.add(new Box(cx - size / 2, cy - size / 2, size, size));
        }
      }
      placer
          .place(wanted)
          .ifPresent(
              box -> {
                double cx = box.x() + size / 2;
                double cy = box.y() + size / 2;
                canvas.line(px, py, cx, cy, new Pen(0.6, Ink.BLACK));
                canvas.disc(px, py, 1.5, Ink.BLACK, new Pen(0.3, Ink.BLACK));
                rings.add(() -> ring(canvas, cx, cy, r, pin.number()));
              });
    }
    return rings;
  }

  private static void ring(Canvas canvas, double cx, double cy, double r, String number) {
    canvas.disc(cx, cy, r, Ink.PAPER, new Pen(0.9, Ink.BLACK));
    canvas.text(cx, cy + 2.7, number, new Type(8, true), Anchor.MIDDLE);
  }
}
