package gradepost.render;

import gradepost.briefing.TrackStrip;
import gradepost.render.Canvas.Anchor;
import gradepost.render.Canvas.Ink;
import gradepost.render.Canvas.Pen;
import gradepost.render.Canvas.Type;
import gradepost.render.LabelPlacer.Box;
import java.util.ArrayList;
import java.util.List;

/**
 * The bands under a chart: lineside names, gradient profile, curves with check rails, platforms.
 */
final class TrackBands {
  static final double PROFILE = 30;
  static final double CURVES = 26;
  static final double LINE = 21;
  static final double AXIS = 12;
  private static final Type SMALL = new Type(7, false);
  private final TrackStrip track;
  private final Scale x;
  private final Fonts fonts;
  private final Flags flags;
  private final double rightEdge;

  TrackBands(TrackStrip track, Scale x, Fonts fonts, double rightEdge) {
    this.track = track;
    this.x = x;
    this.fonts = fonts;
    this.rightEdge = rightEdge;
    this.flags = Flags.of(names(), x.start(), rightEdge, fonts);
  }

  /** What stands beside the line, by name; what a driver must not miss counts more. */
  List<Flags.Flag> names() {
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

  double flagsHeight() {
    return flags.height();
  }

  void flags(Canvas canvas, double top) {
    flags.draw(canvas, top);
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
        Type type = new Type(7.4, major);
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
      double width = fonts.width(s.text(), SMALL);
      if (width + 9 < px[i + 1] - px[i]
          && placer
              .place(List.of(new Box(middle - width / 2 - 4, top + PROFILE - 9, width + 8, 9)))
              .isPresent()) {
        canvas.text(middle + 4, top + PROFILE - 2, s.text(), SMALL, Anchor.MIDDLE);
        if (s.permille() != 0) {
          double left = middle - width / 2 - 5;
          double rise = s.permille() > 0 ? 2.2 : -2.2;
          double y = top + PROFILE - 4.5;
          canvas.line(left, y + rise, left + 6, y - rise, new Pen(0.9, Ink.BLACK));
        }
      }
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
      if (placer
          .place(List.of(new Box(centre - width / 2 - 2, base - 6.5, width + 4, 7)))
          .isPresent()) {
        canvas.text(centre, base, b.text(), SMALL, Anchor.MIDDLE);
      }
    }
  }

  /** The line itself with its platforms and signals, and the platforms' names where they fit. */
  void line(Canvas canvas, double top, boolean names) {
    double middle = top + LINE / 2;
    name(canvas, middle + 2.2, track.names().line());
    canvas.line(x.start(), middle, x.end(), middle, new Pen(1.6, Ink.BLACK));
    Type type = new Type(7.4, true);
    LabelPlacer placer =
        new LabelPlacer(new Box(x.start() - 4, top - 1, x.end() - x.start() + 8, LINE + 2));
    for (TrackStrip.Stretch p : track.platforms()) {
      double a = x.at(p.fromM());
      double e = x.at(p.toM());
      double y = p.left() ? middle - 6.5 : middle + 2;
      canvas.box(a, y, e - a, 4.5, Ink.PALE);
      canvas.frame(a, y, e - a, 4.5, new Pen(0.8, Ink.BLACK));
      if (!names) {
        continue;
      }
      double width = fonts.width(p.text(), type);
      double base = p.left() ? middle + 9 : middle - 3.5;
      double start = Math.max(x.start(), Math.min(a, x.end() - width));
      if (placer.place(List.of(new Box(start - 3, base - 6, width + 6, 7))).isPresent()) {
        canvas.text(start, base, p.text(), type, Anchor.START);
      }
    }
    for (TrackStrip.Sign s : track.signs()) {
      double at = x.at(s.atM());
      switch (s.kind()) {
        case SIGNAL -> {
          canvas.line(at, middle, at, middle - 8, new Pen(1, Ink.BLACK));
          canvas.disc(at, middle - 8, 1.9, Ink.PAPER, new Pen(1, Ink.BLACK));
        }
        case GAP -> canvas.box(at - 1, middle - 3, 2, 6, Ink.BLACK);
        case STRUCTURE -> canvas.line(at, middle - 2.6, at, middle + 2.6, new Pen(1.2, Ink.BLACK));
        case LANDMARK, BOARD, TARGET -> {}
      }
    }
  }
}
