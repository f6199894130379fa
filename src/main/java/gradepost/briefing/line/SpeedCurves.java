package gradepost.briefing.line;

import gradepost.briefing.chart.Curve;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;

/** Speeds against places, as the charts of a plan draw them, between two places in metres run. */
public final class SpeedCurves {
  private final Plan plan;
  private final Words words;

  /** Of one plan. */
  public SpeedCurves(Plan plan, Words words) {
    this.plan = plan;
    this.words = words;
  }

  /**
   * An axis of speed.
   *
   * @param top a whole number of steps: the unit has the place of a figure at the top to itself
   */
  public record Axis(double top, double step) {}

  /** One on which every permissible speed between two places has room. */
  public Axis axis(double from, double to) {
    return axis(plan.ceiling(), words, from, to);
  }

  static Axis axis(List<CeilingStep> ceiling, Words words, double from, double to) {
    double most = 10;
    for (CeilingStep s : ceiling) {
      if (s.toM() > from && s.fromM() < to) {
        most = Math.max(most, words.speedValue(s.speedMps()));
      }
    }
    most += 6;
    double step = most > 80 ? 20 : 10;
    return new Axis(Math.ceil(most / step) * step, step);
  }

  /** The permissible speed, two points for each of its steps. */
  public Curve permissible(double from, double to) {
    List<Curve.Point> points = new ArrayList<>();
    for (CeilingStep s : plan.ceiling()) {
      if (s.toM() > from && s.fromM() < to) {
        double speed = words.speedValue(s.speedMps());
        points.add(new Curve.Point(Math.max(from, s.fromM()), speed));
        points.add(new Curve.Point(Math.min(to, s.toM()), speed));
      }
    }
    return Curve.through(Curve.Kind.PERMISSIBLE, words.text("curve.permissible"), points);
  }

  /** No more points of the run than can be told apart where so much of it fills a drawing. */
  public Trace thinned(double lengthM, int points) {
    double apart = lengthM / points;
    List<Trace.Point> kept = new ArrayList<>();
    double lastM = Double.NEGATIVE_INFINITY;
    for (Trace.Point p : plan.trace().points()) {
      if (p.atM() - lastM >= apart || p.speedMps() == 0) {
        kept.add(p);
        lastM = p.atM();
      }
    }
    return new Trace(kept);
  }

  /** A run, cut at both places. */
  public Curve run(Curve.Kind kind, String text, Trace trace, double from, double to) {
    List<Curve.Point> points = new ArrayList<>();
    List<Trace.Point> all = trace.points();
    for (int i = 0; i < all.size(); i++) {
      Trace.Point p = all.get(i);
      if (p.atM() < from || p.atM() > to) {
        continue;
      }
      if (points.isEmpty() && i > 0 && all.get(i - 1).atM() < from) {
        points.add(edge(all.get(i - 1), p, from));
      }
      points.add(new Curve.Point(p.atM(), words.speedValue(p.speedMps())));
      if (i + 1 < all.size() && all.get(i + 1).atM() > to) {
        points.add(edge(p, all.get(i + 1), to));
      }
    }
    return Curve.through(kind, text, points);
  }

  private Curve.Point edge(Trace.Point a, Trace.Point b, double at) {
    double share = (at - a.atM()) / (b.atM() - a.atM());
    return new Curve.Point(
        at, words.speedValue(a.speedMps() + share * (b.speedMps() - a.speedMps())));
  }
}
