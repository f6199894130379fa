package gradepost.render.chart;

import gradepost.briefing.chart.StripChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** A row of the strip: speeds, the line with what stands beside it, gradient, curves, mileage. */
final class StripDrawing implements Drawing {
  private static final double LEFT = 29;
  private static final double RIGHT = 4;
  private static final double TOP = 2;
  private static final double SPEEDS = 36;

  /** Under the lowest speed there can be: room for its number. */
  private static final double UNDER = 9;

  private final StripChart chart;
  private final Fonts fonts;
  private final Scale x;
  private final Scale y;
  private final TrackBands bands;
  private final Fan fan;

  StripDrawing(StripChart chart, Fonts fonts) {
    this.chart = chart;
    this.fonts = fonts;
    TrackStrip track = chart.track();
    double full = FULL_WIDTH - RIGHT - LEFT;
    double share = Math.min(1, track.lengthM() / chart.scaleM());
    this.x = new Scale(track.fromM(), track.toM(), LEFT, LEFT + full * share);
    this.y = new Scale(0, chart.topSpeed() * 1.12, TOP + SPEEDS - UNDER, TOP);
    this.bands = new TrackBands(track, x, fonts, FULL_WIDTH - 1);
    this.fan = new Fan(bands.names(), LEFT - 20, FULL_WIDTH, fonts);
  }

  @Override
  public double width() {
    return FULL_WIDTH;
  }

  @Override
  public double height() {
    return TOP
        + SPEEDS
        + TrackBands.LINE
        + fan.height()
        + TrackBands.PROFILE
        + TrackBands.CURVES
        + TrackBands.AXIS
        + 2;
  }

  @Override
  public void draw(Canvas canvas) {
    speeds(canvas);
    double top = TOP + SPEEDS + 2;
    bands.line(canvas, top);
    top += TrackBands.LINE;
    fan.draw(canvas, top);
    top += fan.height();
    bands.profile(canvas, top);
    top += TrackBands.PROFILE;
    bands.curves(canvas, top);
    top += TrackBands.CURVES;
    bands.axis(canvas, top);
  }

  private void speeds(Canvas canvas) {
    double bottom = TOP + SPEEDS;
    canvas.line(LEFT, bottom, x.end(), bottom, Pen.GRID);
    canvas.text(LEFT - 3, TOP + 6, chart.speedUnit(), new Canvas.Type(7.4, false), Anchor.END);
    int n = chart.permissible().size();
    double[] px = new double[2 * n];
    double[] py = new double[2 * n];
    LabelPlacer placer = new LabelPlacer(new Box(LEFT, TOP, x.end() - LEFT, SPEEDS));
    for (int i = 0; i < n; i++) {
      StripChart.Step s = chart.permissible().get(i);
      double a = x.at(s.fromM());
      double b = x.at(s.toM());
      double v = y.at(s.speed());
      px[2 * i] = a;
      py[2 * i] = v;
      px[2 * i + 1] = b;
      py[2 * i + 1] = v;
      Hatch.fill(canvas, a, TOP, b - a, v - TOP, 4.5, new Pen(0.35, Ink.DARK));
      if (s.temporary()) {
        Hatch.fill(canvas, a, v, b - a, bottom - v, 2.2, new Pen(0.35, Ink.BLACK));
      }
    }
    HeldDrawing held = new HeldDrawing(chart.held(), x, y, fonts);
    held.bands(canvas);
    canvas.line(px, py, new Pen(2, Ink.BLACK));
    for (int i = 0; i + 1 < px.length; i++) {
      double left = Math.min(px[i], px[i + 1]) - 1;
      double high = Math.min(py[i], py[i + 1]) - 1;
      double wide = Math.abs(px[i + 1] - px[i]) + 2;
      placer.take(new Box(left, high, wide, Math.abs(py[i + 1] - py[i]) + 2));
    }
    held.take(placer);
    for (StripChart.Step s : chart.permissible()) {
      Canvas.Type type = new Canvas.Type(9, true);
      double width = fonts.width(s.text(), type);
      double middle = (x.at(s.fromM()) + x.at(s.toM())) / 2;
      double start = Math.max(LEFT, Math.min(middle - width / 2 - 1.5, x.end() - width - 3));
      double v = y.at(s.speed());
      List<Box> wanted =
          List.of(
              new Box(start, v + 2, width + 3, 8.5),
              new Box(start, bottom - 8.6, width + 3, 8.5),
              new Box(start, v - 11, width + 3, 8.5));
      Box box =
          placer
              .place(wanted)
              .or(() -> placer.place(anywhere(start, v, width + 3)))
              .orElse(wanted.get(0));
      if (box.x() > middle || box.x() + box.width() < middle) {
        canvas.line(
            Math.max(box.x(), Math.min(middle, box.x() + box.width())),
            box.y() + box.height() / 2,
            middle,
            v,
            Pen.HAIR);
      }
      canvas.box(box.x(), box.y(), box.width(), box.height(), Ink.PAPER);
      canvas.text(box.x() + 1.5, box.y() + 7.2, s.text(), type, Anchor.START);
    }
    held.texts(canvas, placer);
    for (TrackStrip.Stretch r : chart.restrictions()) {
      Canvas.Type type = new Canvas.Type(7, true);
      double width = fonts.width(r.text(), type);
      double a = Math.max(LEFT, Math.min(x.at(r.fromM()) + 2.5, x.end() - width));
      placer
          .place(
              List.of(
                  new Box(a - 1, TOP + 1, width + 2, 8), new Box(a - 1, TOP + 11, width + 2, 8)))
          .ifPresent(
              box -> {
                canvas.box(box.x(), box.y(), box.width(), box.height(), Ink.PAPER);
                canvas.text(box.x() + 1, box.y() + 6.4, r.text(), type, Anchor.START);
              });
    }
  }

  /** The band of the speeds, the nearest to a step first: no step is without its figure. */
  private List<Box> anywhere(double start, double v, double width) {
    List<Box> all = new ArrayList<>();
    for (double left = LEFT; left + width <= x.end(); left += 3) {
      for (double top = TOP; top + 8.5 <= TOP + SPEEDS; top += 3) {
        all.add(new Box(left, top, width, 8.5));
      }
    }
    all.sort(Comparator.comparingDouble(b -> Math.hypot(b.x() - start, b.y() - v - 2)));
    return all;
  }
}
