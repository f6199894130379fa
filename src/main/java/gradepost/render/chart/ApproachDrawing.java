package gradepost.render.chart;

import gradepost.briefing.chart.ApproachChart;
import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.TrackStrip;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Speed against distance to a target, over the track. */
final class ApproachDrawing implements Drawing {
  private static final double LEFT = 29;
  private static final double RIGHT = 6;
  private static final double TOP = 5;
  private static final double LEAST_PLOT = 46;
  private static final double LEAST_BAND = 3;
  private static final double POINTS_PER_MM = 72 / 25.4;

  /** Radius of the ring round a number, and what it takes with its rim. */
  static final double RING = 5.4;

  private static final double SIZE = 2 * RING + 1.4;

  /**
   * On a telephone: letters are as large as the text around them when it is as wide as the screen.
   */
  private static final double NARROW = 236;

  private static final double NARROW_PLOT = 96;

  private final ApproachChart chart;
  private final Fonts fonts;
  private final double width;
  private final double plot;
  private final Scale x;
  private final Scale y;
  private final TrackBands bands;
  private final Flags flags;

  /** For paper, as high as the chart says. */
  ApproachDrawing(ApproachChart chart, Fonts fonts) {
    this(chart, fonts, FULL_WIDTH, LEAST_PLOT, chart.heightMm() * POINTS_PER_MM);
  }

  private ApproachDrawing(
      ApproachChart chart, Fonts fonts, double width, double leastPlot, double height) {
    this.chart = chart;
    this.fonts = fonts;
    this.width = width;
    TrackStrip track = chart.track();
    this.x = new Scale(track.fromM(), track.toM(), LEFT, width - RIGHT);
    this.bands = new TrackBands(track, x, fonts, width - 1);
    this.flags = bands.flags();
    this.plot = Math.max(leastPlot, height - TOP - under());
    this.y = new Scale(0, chart.topSpeed(), TOP + plot, TOP);
  }

  /** For a screen, as narrow as that of a telephone; on a wider one it is drawn larger. */
  static ApproachDrawing narrow(ApproachChart chart, Fonts fonts) {
    return new ApproachDrawing(chart, fonts, NARROW, NARROW_PLOT, 0);
  }

  @Override
  public double width() {
    return width;
  }

  @Override
  public double height() {
    return TOP + plot + under();
  }

  /** What stands below the plot. */
  private double under() {
    return TrackBands.AXIS
        + flags.height()
        + TrackBands.PROFILE
        + TrackBands.CURVES
        + TrackBands.LINE
        + 2;
  }

  @Override
  public void draw(Canvas canvas) {
    double bottom = TOP + plot;
    grid(canvas, bottom);
    canvas.clip(LEFT, TOP, x.end() - LEFT, plot + 1);
    chart.curves().stream()
        .filter(c -> c.kind() == Curve.Kind.PERMISSIBLE)
        .forEach(c -> Hatch.above(canvas, c, x, y, TOP));
    chart.last().ifPresent(last -> last(canvas, last));
    HeldDrawing held = new HeldDrawing(chart.held(), x, y, fonts);
    held.bands(canvas);
    for (Curve c : chart.curves()) {
      canvas.line(x.at(c.x()), y.at(c.y()), pen(c.kind()));
    }
    canvas.unclip();
    double target = x.at(chart.targetM());
    Pen mark = new Pen(1.1, Ink.BLACK, 5, 2, 1, 2);
    canvas.line(target, TOP, target, bottom, mark);
    double under = bottom + TrackBands.AXIS + flags.height();
    canvas.line(target, under, target, height() - 2, mark);
    LabelPlacer placer = new LabelPlacer(new Box(LEFT, TOP, x.end() - LEFT, plot));
    placer.take(new Box(target - 1, TOP, 2, plot));
    List<Runnable> rings = pins(canvas, placer);
    held.texts(canvas, placer);
    chart.last().ifPresent(last -> called(canvas, placer, last));
    new LineLabels(chart, x, y, fonts, placer).draw(canvas);
    rings.forEach(Runnable::run);
    bands.axis(canvas, bottom);
    double top = bottom + TrackBands.AXIS;
    flags.draw(canvas, top);
    top += flags.height();
    bands.profile(canvas, top);
    top += TrackBands.PROFILE;
    bands.curves(canvas, top);
    top += TrackBands.CURVES;
    bands.line(canvas, top);
  }

  /** A band, at least wide enough to be seen. */
  private void last(Canvas canvas, ApproachChart.Last last) {
    double from = x.at(last.fromM());
    canvas.box(from, TOP, Math.max(LEAST_BAND, x.at(last.toM()) - from), plot, Ink.BAND);
  }

  private void called(Canvas canvas, LabelPlacer placer, ApproachChart.Last last) {
    Canvas.Type type = new Canvas.Type(7.4, false);
    double width = fonts.width(last.text(), type) + 4;
    double right = Math.max(x.at(last.fromM()) + LEAST_BAND, x.at(last.toM()));
    List<Box> wanted = new ArrayList<>();
    for (double down = 2; down < plot - 10; down += 9) {
      wanted.add(new Box(right + 2, TOP + down, width, 9));
      wanted.add(new Box(x.at(last.fromM()) - width - 2, TOP + down, width, 9));
    }
    placer
        .place(wanted)
        .ifPresent(
            b -> {
              canvas.box(b.x(), b.y(), b.width(), b.height(), Ink.PAPER);
              canvas.text(b.x() + 2, b.y() + 7, last.text(), type, Anchor.START);
            });
  }

  private void grid(Canvas canvas, double bottom) {
    double most = chart.topSpeed();
    SpeedAxis.draw(canvas, LEFT, TOP, x.end(), y, most, chart.speedStep(), chart.speedUnit());
    for (TrackStrip.Tick tick : chart.track().ticks()) {
      double at = x.at(tick.atM());
      canvas.line(at, TOP, at, bottom, Pen.GRID);
    }
    canvas.line(LEFT, TOP, LEFT, bottom, new Pen(0.8, Ink.BLACK));
  }

  static Pen pen(Curve.Kind kind) {
    return switch (kind) {
      case PERMISSIBLE -> new Pen(2.4, Ink.BLACK);
      case PLANNED -> new Pen(1.5, Ink.BLACK);
      case DRIVEN -> new Pen(1.9, Ink.BLACK);
    };
  }

  /**
   * Strokes to the rings, and the rings: to be drawn when no stroke can run through one. Every pin
   * has its ring; those of actions before the chart begins stand in a row at its foot, after an
   * arrow.
   */
  private List<Runnable> pins(Canvas canvas, LabelPlacer placer) {
    List<Runnable> rings = new ArrayList<>();
    List<ApproachChart.Pin> shown = new ArrayList<>();
    List<ApproachChart.Pin> before = new ArrayList<>();
    chart.pins().forEach(p -> (p.atM() < chart.track().fromM() ? before : shown).add(p));
    earlier(canvas, before, placer, rings);
    for (ApproachChart.Pin pin : shown) {
      placer.take(new Box(x.at(pin.atM()) - 1.5, y.at(pin.speed()) - 1.5, 3, 3));
    }
    for (ApproachChart.Pin pin : shown) {
      double px = x.at(pin.atM());
      double py = y.at(pin.speed());
      Box box =
          placer
              .place(near(px, py))
              .or(() -> placer.place(anywhere(px, py)))
              .orElseThrow(() -> new IllegalStateException("no room for " + pin));
      double cx = box.x() + SIZE / 2;
      double cy = box.y() + SIZE / 2;
      canvas.line(px, py, cx, cy, new Pen(0.6, Ink.BLACK));
      canvas.disc(px, py, 1.5, Ink.BLACK, new Pen(0.3, Ink.BLACK));
      rings.add(() -> ring(canvas, cx, cy, pin.number()));
    }
    return rings;
  }

  private void earlier(
      Canvas canvas, List<ApproachChart.Pin> before, LabelPlacer placer, List<Runnable> rings) {
    if (before.isEmpty()) {
      return;
    }
    double cy = TOP + plot - SIZE / 2 - 2;
    placer.take(new Box(LEFT, cy - SIZE / 2, 8 + before.size() * SIZE, SIZE));
    canvas.area(
        new double[] {LEFT + 2, LEFT + 7, LEFT + 7}, new double[] {cy, cy - 4, cy + 4}, Ink.BLACK);
    for (int i = 0; i < before.size(); i++) {
      double cx = LEFT + 8 + (i + 0.5) * SIZE;
      String number = before.get(i).number();
      rings.add(() -> ring(canvas, cx, cy, number));
    }
  }

  private static List<Box> near(double px, double py) {
    List<Box> wanted = new ArrayList<>();
    for (double far : new double[] {12, 20, 28, 36, 46, 58}) {
      for (double[] way :
          new double[][] {
            {-0.45, 0.9}, {0, 1}, {-0.8, 0.6}, {0.5, -0.9}, {0, -1}, {-1, 0}, {1, 0}
          }) {
        wanted.add(around(px + way[0] * far, py + way[1] * far));
      }
    }
    return wanted;
  }

  /** The whole plot, the nearest first. */
  private List<Box> anywhere(double px, double py) {
    List<Box> all = new ArrayList<>();
    for (double cx = LEFT + SIZE / 2; cx <= x.end(); cx += 4) {
      for (double cy = TOP + SIZE / 2; cy <= TOP + plot; cy += 4) {
        all.add(around(cx, cy));
      }
    }
    all.sort(
        Comparator.comparingDouble(b -> Math.hypot(b.x() + SIZE / 2 - px, b.y() + SIZE / 2 - py)));
    return all;
  }

  private static Box around(double cx, double cy) {
    return new Box(cx - SIZE / 2, cy - SIZE / 2, SIZE, SIZE);
  }

  private static void ring(Canvas canvas, double cx, double cy, String number) {
    canvas.disc(cx, cy, RING, Ink.PAPER, new Pen(0.9, Ink.BLACK));
    canvas.text(cx, cy + 2.7, number, new Canvas.Type(8, true), Anchor.MIDDLE);
  }
}
