package gradepost.briefing.line;

import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.RunChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.word.Words;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.route.Structure;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a sheet of the line draws between two places. */
final class LineChartWriter {
  /** Points of the run on a sheet. */
  private static final int MOST_POINTS = 700;

  private final Plan plan;
  private final Words words;
  private final Lineside lineside;
  private final TrackStripWriter strips;
  private final SpeedCurves speeds;

  LineChartWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.words = lineside.words();
    this.lineside = lineside;
    this.strips = new TrackStripWriter(plan.assignment(), lineside);
    this.speeds = new SpeedCurves(plan, words);
  }

  /** Posts of the whole line, metres run. */
  List<Double> posts() {
    return strips.strip(0, words.path().lengthM()).ticks().stream()
        .map(TrackStrip.Tick::atM)
        .toList();
  }

  /**
   * @param levels of the rows beside it
   * @param begun the rows that put a brake on for a target, in order
   * @param driven whether the run is drawn
   * @param roomPx height below the head, CSS pixels
   */
  LineChart chart(
      String id,
      double from,
      double to,
      List<LineChart.Level> levels,
      List<LineRows.Row> begun,
      boolean driven,
      int roomPx) {
    SpeedCurves.Axis axis = speeds.axis(0, words.path().lengthM());
    TrackStrip track = strips.strip(from, to);
    List<LineChart.Step> steps = steps(from, to);
    Curve planned =
        driven
            ? speeds.run(
                Curve.Kind.PLANNED,
                words.text("curve.planned"),
                speeds.thinned(to - from, MOST_POINTS),
                from,
                to)
            : Curve.through(Curve.Kind.PLANNED, words.text("curve.planned"), List.of());
    return new LineChart(
        id + "-chart",
        words.text("line.chart", words.place(from), words.place(to)),
        says(track, steps, begun.size()),
        axis.top(),
        axis.step(),
        steps,
        planned,
        driven ? HeldBands.of(plan, words, from, to) : List.of(),
        points(begun),
        structures(from, to),
        gaps(from, to),
        magnets(from, to),
        new LineChart.Heads(
            words.units().speedUnit(),
            track.names().slopes(),
            track.names().bends(),
            words.text("line.left"),
            words.text("line.right")),
        track,
        levels,
        RowSetting.HEAD_PX,
        roomPx);
  }

  private List<RunChart.Point> points(List<LineRows.Row> begun) {
    Run run = new Run(plan.trace());
    List<RunChart.Point> out = new ArrayList<>();
    for (LineRows.Row row : begun) {
      out.add(
          new RunChart.Point(
              Integer.toString(out.size() + 1),
              row.atM(),
              words.speedValue(run.speedAt(row.atM()))));
    }
    return out;
  }

  private String says(TrackStrip track, List<LineChart.Step> steps, int points) {
    return words.text(
        "line.says",
        words.place(track.fromM()),
        words.place(track.toM()),
        joined(track.platforms().stream().map(TrackStrip.Stretch::text), "line.no-station"),
        words.units().speedUnit(),
        joined(
            steps.stream().map(LineChart.Step::text).filter(t -> !t.isEmpty()), "line.says.none"),
        joined(track.slopes().stream().map(s -> words.gradient(s.permille())), "line.says.none"),
        joined(track.bends().stream().map(this::bend), "line.says.none"),
        points);
  }

  private String joined(Stream<String> texts, String none) {
    String all = texts.collect(Collectors.joining(", "));
    return all.isEmpty() ? words.text(none) : all;
  }

  private String bend(TrackStrip.Bend b) {
    String curve = words.text("line.curve", b.text(), side(b.left()));
    if (!b.checkLeft() && !b.checkRight()) {
      return curve;
    }
    String rail =
        b.checkLeft() && b.checkRight()
            ? words.text("check-rail.both")
            : words.text("check-rail.beside", side(b.checkLeft()));
    return words.text("line.curve-checked", curve, rail);
  }

  private String side(boolean left) {
    return words.text(left ? "hand.left" : "hand.right");
  }

  private List<TrackStrip.Stretch> structures(double from, double to) {
    return plan.assignment().route().structures().stream()
        .map(s -> lineside.over(s, s.extent()))
        .filter(o -> o.toM() >= from && o.fromM() <= to)
        .map(o -> cut(o.fromM(), o.toM(), from, to, kind(o.what())))
        .toList();
  }

  private String kind(Structure structure) {
    return words.text("structure." + TrackStripWriter.lower(structure.kind()));
  }

  private List<TrackStrip.Stretch> gaps(double from, double to) {
    return plan.assignment().route().railGaps().stream()
        .filter(g -> lineside.applies(g.applies()))
        .map(g -> lineside.over(g, g.extent()))
        .filter(o -> o.toM() >= from && o.fromM() <= to)
        .map(o -> cut(o.fromM(), o.toM(), from, to, o.what().name()))
        .toList();
  }

  private static TrackStrip.Stretch cut(double a, double b, double from, double to, String text) {
    return new TrackStrip.Stretch(Math.max(from, a), Math.min(to, b), text, true);
  }

  private List<Double> magnets(double from, double to) {
    return lineside.signals().stream()
        .flatMap(s -> s.what().aws().stream())
        .map(a -> words.path().metresAt(a))
        .filter(m -> m >= from && m <= to)
        .toList();
  }

  private List<LineChart.Step> steps(double from, double to) {
    List<LineChart.Step> steps = new ArrayList<>();
    for (CeilingStep s : plan.ceiling()) {
      if (s.toM() <= from || s.fromM() >= to) {
        continue;
      }
      double end = Math.min(to, s.toM());
      double cut = Math.max(from, s.fromM());
      String number = words.number(s.speedMps());
      for (TrackStrip.Stretch notice : notices(s, cut, end)) {
        if (notice.fromM() > cut) {
          steps.add(step(cut, notice.fromM(), s, number, false));
          number = "";
        }
        steps.add(step(notice.fromM(), notice.toM(), s, number, true));
        number = "";
        cut = notice.toM();
      }
      if (cut < end) {
        steps.add(step(cut, end, s, number, false));
      }
    }
    return steps;
  }

  private LineChart.Step step(
      double from, double to, CeilingStep of, String number, boolean notice) {
    return new LineChart.Step(from, to, words.speedValue(of.speedMps()), number, notice);
  }

  /** The parts of a stretch that notices set, each from its beginning until the rear is clear. */
  private List<TrackStrip.Stretch> notices(CeilingStep step, double from, double to) {
    double train = plan.assignment().formation().lengthM();
    List<TrackStrip.Stretch> out = new ArrayList<>();
    double cut = from;
    for (String cause : Stream.concat(Stream.of(step.cause()), step.then().stream()).toList()) {
      for (TemporaryRestriction r : plan.assignment().restrictions()) {
        if (r.reference().equals(cause)) {
          Lineside.Over<TemporaryRestriction> o = lineside.over(r, r.extent());
          double a = Math.max(cut, o.fromM());
          double b = Math.min(to, o.toM() + train);
          if (a < b) {
            out.add(new TrackStrip.Stretch(a, b, cause, true));
            cut = b;
          }
        }
      }
    }
    return out;
  }
}
