package gradepost.render.chart;

import gradepost.briefing.chart.TrackStrip;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import gradepost.render.chart.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.List;

/**
 * The bands under a chart: lineside names, gradient profile, curves with check rails, platforms.
 */
final class TrackBands {
  static final double PROFILE = 26;
  static final double CURVES = 24;
  static final double LINE = 15;
  static final double AXIS = 12;
  private static final Canvas.Type SMALL = new Canvas.Type(7, false);

  /** Room for the stroke that shows whether a slope rises. */
  private static final double ARROW = 10;

  private final TrackStrip track;
  private final Scale x;
  private final Fonts fonts;
  private final double rightEdge;

  private final Standing standing;

  TrackBands(TrackStrip track, Scale x, Fonts fonts, double rightEdge) {
    this.track = track;
    this.x = x;
    this.fonts = fonts;
    this.rightEdge = rightEdge;
    this.standing = Standing.of(track, x);
  }

  /** Hangs the names of what stands beside the line; what a driver must not miss counts more. */
  Flags flags() {
    return Flags.of(names(), x.start(), rightEdge, fonts);
  }

  private List<Flags.Flag> names() {
    List<Flags.Flag> list = new ArrayList<>();
    for (TrackStrip.Sign sign : track.signs()) {
      int weight =
          switch (sign.kind()) {
            case TARGET -> 3;
            case SIGNAL, BOARD, GAP -> 2;
            case LANDMARK -> 1;
            case STRUCTURE -> 0;
          };
      list.add(
          new Flags.Flag(
              x.at(sign.atM()), sign.text(), sign.kind() == TrackStrip.Kind.TARGET, weight));
    }
    return list;
  }

  /** Mileages along a line at {@code y}; those that do not fit are left out, whole ones last. */
  void axis(Canvas canvas, double y) {
    LabelPlacer placer =
        new LabelPlacer(new Box(x.start() - 20, y, rightEdge - x.start() + 21, AXIS));
    canvas.line(x.start(), y, x.end(), y, new Pen(0.8, Ink.BLACK));
    for (boolean major : new boolean[] {true, false}) {
      for (TrackStrip.Tick tick : track.ticks()) {
        if (tick.major() != major) {
          continue;
        }
        double at = x.at(tick.atM());
        canvas.line(at, y, at, y + (major ? 4.5 : 3), new Pen(0.7, Ink.BLACK));
        Canvas.Type type = new Canvas.Type(7.4, major);
        double width = fonts.width(tick.text(), type);
        Box box = new Box(at - width / 2 - 2, y + 2, width + 4, 9);
        if (placer.place(List.of(box)).isPresent()) {
          canvas.text(at, y + 10.5, tick.text(), type, Anchor.MIDDLE);
        }
      }
    }
  }

  private void name(Canvas canvas, double base, String text) {
    canvas.text(x.start() - 3, base, text, SMALL, Anchor.END);
  }

  void profile(Canvas canvas, double top) {
    name(canvas, top + PROFILE - 2, track.names().slopes());
    int n = track.slopes().size();
    double[] px = new double[n + 3];
    double[] h = new double[n + 1];
    px[0] = x.at(track.fromM());
    double low = 0;
    double high = 0;
    for (int i = 0; i < n; i++) {
      TrackStrip.Slope s = track.slopes().get(i);
      px[i + 1] = x.at(s.toM());
      h[i + 1] = h[i] + (s.toM() - s.fromM()) * s.permille() / 1000;
      low = Math.min(low, h[i + 1]);
      high = Math.max(high, h[i + 1]);
    }
    double room = PROFILE - 13;
    double per = Math.min(room / Math.max(high - low, 0.01), room / 3);
    double[] py = new double[n + 3];
    for (int i = 0; i <= n; i++) {
      py[i] = top + 2 + (high - h[i]) * per + (room - (high - low) * per) / 2;
    }
    px[n + 1] = px[n];
    py[n + 1] = top + PROFILE - 10;
    px[n + 2] = px[0];
    py[n + 2] = top + PROFILE - 10;
    canvas.area(px, py, Ink.FAINT);
    canvas.line(
        java.util.Arrays.copyOf(px, n + 1),
        java.util.Arrays.copyOf(py, n + 1),
        new Pen(1, Ink.BLACK));
    LabelPlacer placer = new LabelPlacer(new Box(x.start(), top, x.end() - x.start(), PROFILE));
    for (int i = 0; i < n; i++) {
      TrackStrip.Slope s = track.slopes().get(i);
      canvas.line(px[i + 1], py[i + 1], px[i + 1], top + PROFILE - 6, Pen.HAIR);
      double middle = (px[i] + px[i + 1]) / 2;
      double width = fonts.width(s.text(), SMALL) + ARROW;
      for (double start : standing.starts(middle - width / 2, width)) {
        if (start >= px[i]
            && start + width <= px[i + 1]
            && placer.place(List.of(new Box(start, top + PROFILE - 9, width, 9))).isPresent()) {
          slope(canvas, s, start, top + PROFILE - 2);
          break;
        }
      }
    }
  }

  private static void slope(Canvas canvas, TrackStrip.Slope s, double start, double base) {
    canvas.text(start + ARROW - 1, base, s.text(), SMALL, Anchor.START);
    if (s.permille() != 0) {
      double rise = s.permille() > 0 ? 2.2 : -2.2;
      double y = base - 2.5;
      canvas.line(start + 1, y + rise, start + 7, y - rise, new Pen(0.9, Ink.BLACK));
    }
  }

  void curves(Canvas canvas, double top) {
    double middle = top + CURVES / 2;
    name(canvas, middle + 2.2, track.names().bends());
    canvas.line(x.start(), middle, x.end(), middle, new Pen(0.6, Ink.BLACK));
    LabelPlacer placer = new LabelPlacer(new Box(x.start(), top, x.end() - x.start(), CURVES));
    for (TrackStrip.Bend b : track.bends()) {
      double a = x.at(b.fromM());
      double e = x.at(b.toM());
      double edge = b.left() ? middle - 6 : middle + 6;
      double ramp = Math.min(3, (e - a) / 3);
      double[] px = {a, a + ramp, e - ramp, e};
      double[] py = {middle, edge, edge, middle};
      canvas.area(px, py, Ink.FAINT);
      canvas.line(px, py, new Pen(0.9, Ink.BLACK));
      Pen bar = new Pen(2.2, Ink.BLACK);
      if (b.checkLeft()) {
        double y = b.left() ? edge : middle - 2.2;
        canvas.line(a, y - 1.5, e, y - 1.5, bar);
      }
      if (b.checkRight()) {
        double y = b.left() ? middle + 2.2 : edge;
        canvas.line(a, y + 1.5, e, y + 1.5, bar);
      }
      double width = fonts.width(b.text(), SMALL);
      double other = b.left() ? middle + 8.6 : middle - 4;
      double centre = Math.max(x.start() + width / 2, Math.min((a + e) / 2, x.end() - width / 2));
      boolean crowded = b.left() ? b.checkRight() : b.checkLeft();
      double base = other + (crowded ? (b.left() ? 3 : -3) : 0);
      placer
          .place(
              standing.starts(centre - width / 2, width).stream()
                  .map(start -> new Box(start - 2, base - 6.5, width + 4, 7))
                  .toList())
          .ifPresent(box -> canvas.text(box.x() + 2, base, b.text(), SMALL, Anchor.START));
    }
  }

  /** The line itself with its platforms and signals, and the platforms' names where they fit. */
  void line(Canvas canvas, double top) {
    name(canvas, top + LINE / 2 + 2.2, track.names().line());
    new LineBand(track, x, fonts, standing).draw(canvas, top);
  }
}
