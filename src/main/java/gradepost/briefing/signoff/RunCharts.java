package gradepost.briefing.signoff;

import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.RunChart;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.plan.Plan;
import gradepost.ride.Measured;
import gradepost.ride.RideResult;
import gradepost.ride.TiedRun;
import gradepost.task.CeilingStep;
import gradepost.units.Exact;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;

/** The driven run over the planned one, in rows of about two miles or three kilometres. */
final class RunCharts {
  /** More points than this over its width no chart shows. */
  private static final double FINEST = 2000;

  private final BriefingFacts taught;
  private final Plan plan;
  private final TiedRun run;
  private final RideResult result;
  private final double top;
  private final double step;

  RunCharts(BriefingFacts taught, TiedRun run, RideResult result) {
    this.taught = taught;
    this.plan = taught.plan();
    this.run = run;
    this.result = result;
    double most = 10;
    for (CeilingStep s : plan.ceiling()) {
      most = Math.max(most, taught.speedValue(s.speedMps()));
    }
    for (int i = 0; i < run.size(); i++) {
      most = Math.max(most, taught.speedValue(run.speedMps(i)));
    }
    this.step = most + 6 > 80 ? 20 : 10;
    this.top = Math.ceil((most + 6) / step) * step;
  }

  List<RunChart> rows() {
    double from = run.atM(0);
    double end =
        Math.min(
            taught.path().lengthM(),
            Math.max(run.atM(run.size() - 1) + 20, from + taught.units().placeStepM()));
    double row = taught.units() == UnitStyle.MILES ? 2 * Exact.MILE_M : 3000;
    int count = (int) Math.max(1, Math.ceil((end - from) / row - 0.2));
    double each = (end - from) / count;
    List<RunChart> out = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      out.add(chart("so-run" + (i + 1), from + i * each, from + (i + 1) * each));
    }
    return out;
  }

  /** The whole road on one picture. */
  RunChart whole() {
    return chart("so-whole", run.atM(0), Math.min(taught.path().lengthM(), run.lastM()));
  }

  private RunChart chart(String id, double from, double to) {
    List<Curve.Point> planned = new ArrayList<>();
    plan.trace().points().forEach(p -> planned.add(point(p.atM(), p.speedMps())));
    List<Curve.Point> driven = new ArrayList<>();
    double apartM = (to - from) / FINEST;
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < run.size(); i++) {
      if (run.atM(i) >= last + apartM || i + 1 == run.size()) {
        last = run.atM(i);
        driven.add(point(last, run.speedMps(i)));
      }
    }
    return new RunChart(
        id,
        taught.text("signoff.report.chart", taught.place(from), taught.place(to)),
        taught.text("signoff.report.chart-row", taught.place(from), taught.place(to)),
        taught.units().speedUnit(),
        top,
        step,
        List.of(
            curve(Curve.Kind.PERMISSIBLE, "curve.permissible", permissible(from, to)),
            curve(Curve.Kind.PLANNED, "curve.planned", within(planned, from, to)),
            curve(Curve.Kind.DRIVEN, "curve.driven", within(driven, from, to))),
        taught.held(from, to),
        briefed(from, to),
        braked(from, to),
        taught.track(from, to));
  }

  private Curve.Point point(double atM, double mps) {
    return new Curve.Point(atM, taught.speedValue(mps));
  }

  private List<Curve.Point> permissible(double from, double to) {
    List<Curve.Point> out = new ArrayList<>();
    for (CeilingStep s : plan.ceiling()) {
      if (s.toM() > from && s.fromM() < to) {
        out.add(point(Math.max(from, s.fromM()), s.speedMps()));
        out.add(point(Math.min(to, s.toM()), s.speedMps()));
      }
    }
    return out;
  }

  /** The part of a line between two places, cut at both. */
  private static List<Curve.Point> within(List<Curve.Point> line, double from, double to) {
    List<Curve.Point> out = new ArrayList<>();
    for (int i = 0; i < line.size(); i++) {
      Curve.Point p = line.get(i);
      if (i > 0) {
        Curve.Point a = line.get(i - 1);
        for (double edge : new double[] {from, to}) {
          if (a.x() < edge && p.x() > edge) {
            double share = (edge - a.x()) / (p.x() - a.x());
            out.add(new Curve.Point(edge, a.y() + share * (p.y() - a.y())));
          }
        }
      }
      if (p.x() >= from && p.x() <= to) {
        out.add(p);
      }
    }
    return out;
  }

  private List<RunChart.Point> briefed(double from, double to) {
    List<RunChart.Point> out = new ArrayList<>();
    for (RideResult.OfApproach a : result.approaches()) {
      a.approach()
          .brakingPointM()
          .filter(at -> at >= from && at < to)
          .ifPresent(
              at ->
                  out.add(
                      new RunChart.Point(
                          Integer.toString(a.approach().number()),
                          at,
                          taught.speedValue(a.approach().brakingSpeedMps()))));
    }
    return out;
  }

  private List<RunChart.Point> braked(double from, double to) {
    List<RunChart.Point> out = new ArrayList<>();
    for (RideResult.OfApproach a : result.approaches()) {
      a.observed()
          .brakedAtM()
          .map(Measured::value)
          .filter(at -> at >= from && at < to)
          .ifPresent(
              at ->
                  out.add(
                      new RunChart.Point(
                          Integer.toString(a.approach().number()),
                          at,
                          taught.speedValue(
                              a.observed().brakedSpeedMps().map(Measured::value).orElse(0.0)))));
    }
    return out;
  }

  private Curve curve(Curve.Kind kind, String key, List<Curve.Point> points) {
    return Curve.through(kind, taught.text(key), points);
  }
}
