package gradepost.render.chart;

import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.Spreading;
import gradepost.briefing.chart.TrackStrip;
import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Ink;
import gradepost.render.chart.Canvas.Pen;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Gradients, curves and the line down a sheet, each with its figures and names. */
final class LineColumns {
  private static final Canvas.Type SMALL = LineSheetDrawing.SMALL;

  /** From figure to figure. */
  private static final double STEP = 7.6;

  /** From the top of a figure to its base line. */
  private static final double BASE = 5.6;

  /** The steepest gradient that a bar shows longer than a gentler one, per mille. */
  private static final double STEEP = 20;

  private static final double BAR = 3.5;
  private static final double PLATFORM = 5;

  /** From the line to the right edge of its column. */
  private static final double RIGHT = 9;

  private final LineChart chart;
  private final TrackStrip track;
  private final Scale y;

  LineColumns(LineChart chart, Scale y) {
    this.chart = chart;
    this.track = chart.track();
    this.y = y;
  }

  static double lineX(double left, double right) {
    return right - RIGHT;
  }

  /**
   * A figure or name.
   *
   * @param at the place that it belongs to
   * @param size how much it matters where room is short
   * @param way 1 for a line that rises, −1 for one that falls
   */
  private record Label(double at, String text, double size, double way) {}

  /** A label where it is written: the middle of its letters. */
  private record Written(Label label, double middle) {}

  /** Moved apart, in their order; where there is no room for all, the smallest go. */
  private List<Written> written(List<Label> labels) {
    List<Label> kept = new ArrayList<>(labels);
    int most = (int) Math.floor((y.end() - y.start()) / STEP);
    while (kept.size() > most) {
      kept.remove(kept.stream().min(Comparator.comparingDouble(Label::size)).orElseThrow());
    }
    double[] wanted = kept.stream().mapToDouble(l -> l.at() - STEP / 2).toArray();
    double[] sizes = kept.stream().mapToDouble(l -> STEP).toArray();
    double[] tops = Spreading.of(wanted, sizes, y.start() + 0.5, y.end());
    List<Written> out = new ArrayList<>();
    for (int i = 0; i < tops.length; i++) {
      out.add(new Written(kept.get(i), tops[i] + STEP / 2));
    }
    return out;
  }

  private static double base(Written w) {
    return w.middle() - STEP / 2 + BASE + 0.6;
  }

  /** Bars to the right where the line rises, to the left where it falls, and the figures. */
  void slopes(Canvas canvas, double left, double right) {
    double middle = left + BAR;
    List<Label> labels = new ArrayList<>();
    for (TrackStrip.Slope s : track.slopes()) {
      double top = y.at(s.fromM());
      double high = y.at(s.toM()) - top;
      double length = BAR * Math.min(1, Math.abs(s.permille()) / STEEP);
      double start = s.permille() > 0 ? middle : middle - length;
      if (length > 0) {
        canvas.box(start, top, length, high, Ink.PALE);
        canvas.frame(start, top, length, high, new Pen(0.5, Ink.BLACK));
      }
      canvas.line(left, top, left + 2 * BAR, top, Pen.HAIR);
      labels.add(new Label(top + high / 2, s.text(), high, Math.signum(s.permille())));
    }
    canvas.line(middle, y.start(), middle, y.end(), new Pen(0.8, Ink.BLACK));
    for (Written w : written(labels)) {
      double text = left + 2 * BAR + 8;
      leader(canvas, w, left + 2 * BAR, left + 2 * BAR + 1.5);
      way(canvas, left + 2 * BAR + 2, w);
      canvas.text(text, base(w), w.label().text(), SMALL, Anchor.START);
    }
  }

  /** A stroke up where the line rises in the direction of travel, down where it falls. */
  private static void way(Canvas canvas, double x, Written w) {
    if (w.label().way() != 0) {
      double rise = 2.2 * w.label().way();
      canvas.line(x, w.middle() + rise, x + 5.5, w.middle() - rise, new Pen(0.9, Ink.BLACK));
    }
  }

  /** A hair where a figure could not stay beside its place. */
  private static void leader(Canvas canvas, Written w, double from, double to) {
    if (Math.abs(w.middle() - w.label().at()) > 2) {
      canvas.line(from, w.label().at(), to, w.middle(), Pen.HAIR);
    }
  }

  /** Bulges to the hand of each curve, check rails thick, and the radii. */
  void bends(Canvas canvas, double left, double right) {
    double middle = left + 4.5;
    canvas.line(middle, y.start(), middle, y.end(), new Pen(0.6, Ink.BLACK));
    List<Label> labels = new ArrayList<>();
    for (TrackStrip.Bend b : track.bends()) {
      double a = y.at(b.fromM());
      double e = y.at(b.toM());
      double edge = b.left() ? middle - 4 : middle + 4;
      double ramp = Math.min(3, (e - a) / 3);
      double[] px = {middle, edge, edge, middle};
      double[] py = {a, a + ramp, e - ramp, e};
      canvas.area(px, py, Ink.PALE);
      canvas.line(px, py, new Pen(0.9, Ink.BLACK));
      Pen bar = new Pen(2, Ink.BLACK);
      if (b.checkLeft()) {
        double x = b.left() ? edge : middle - 1.5;
        canvas.line(x, a, x, e, bar);
      }
      if (b.checkRight()) {
        double x = b.left() ? middle + 1.5 : edge;
        canvas.line(x, a, x, e, bar);
      }
      labels.add(new Label((a + e) / 2, b.text(), e - a, 0));
    }
    for (Written w : written(labels)) {
      double text = left + 10;
      leader(canvas, w, left + 9.5, text - 0.5);
      canvas.text(text, base(w), w.label().text(), SMALL, Anchor.START);
    }
  }

  /** The line with platforms, structures, gaps, magnets, and signals with their names. */
  void line(Canvas canvas, double left, double right) {
    double middle = lineX(left, right);
    structures(canvas, middle);
    canvas.line(middle, y.start(), middle, y.end(), new Pen(1.6, Ink.BLACK));
    for (TrackStrip.Stretch p : track.platforms()) {
      double a = y.at(p.fromM());
      double e = y.at(p.toM());
      double x = p.left() ? middle - 2 - PLATFORM : middle + 2;
      canvas.box(x, a, PLATFORM, e - a, Ink.PALE);
      canvas.frame(x, a, PLATFORM, e - a, new Pen(0.8, Ink.BLACK));
    }
    for (TrackStrip.Stretch g : chart.gaps()) {
      double a = y.at(g.fromM());
      canvas.box(middle - 2.6, a, 5.2, Math.max(2, y.at(g.toM()) - a), Ink.BLACK);
    }
    for (double m : chart.magnets()) {
      canvas.disc(middle, y.at(m), 1.7, Ink.BLACK, new Pen(0.4, Ink.PAPER));
    }
    signals(canvas, middle);
  }

  /** A stroke across for what is short; both walls of what is long. */
  private void structures(Canvas canvas, double middle) {
    for (TrackStrip.Stretch s : chart.structures()) {
      double a = y.at(s.fromM());
      double e = y.at(s.toM());
      Pen pen = new Pen(1, Ink.BLACK);
      canvas.line(middle - 4, a, middle + 4, a, pen);
      if (e - a > 3) {
        canvas.line(middle - 4, e, middle + 4, e, pen);
        canvas.line(middle - 3, a, middle - 3, e, pen);
        canvas.line(middle + 3, a, middle + 3, e, pen);
      }
    }
  }

  private void signals(Canvas canvas, double middle) {
    List<Label> labels = new ArrayList<>();
    for (TrackStrip.Sign s : track.signs()) {
      if (s.kind() == TrackStrip.Kind.SIGNAL) {
        double at = y.at(s.atM());
        double head = s.left() ? middle - 6 : middle + 6;
        canvas.line(middle, at, head, at, new Pen(1, Ink.BLACK));
        canvas.disc(head, at, 1.8, Ink.PAPER, new Pen(1, Ink.BLACK));
        labels.add(new Label(at, s.text(), 1, 0));
      }
    }
    for (Written w : written(labels)) {
      double end = middle - 8.6;
      leader(canvas, w, middle - 7.8, end + 0.4);
      canvas.text(end, base(w), w.label().text(), SMALL, Anchor.END);
    }
  }
}
