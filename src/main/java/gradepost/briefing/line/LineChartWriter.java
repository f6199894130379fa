package gradepost.briefing.line;

import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.RunChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.word.Words;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import java.util.ArrayList;
import java.util.List;

/** What a sheet of the line draws between two places. */
final class LineChartWriter {
  /** Points of the run on a sheet. */
  private static final int MOST_POINTS = 700;

  private final Plan plan;
  private final Words words;
  private final LineTrack line;
  private final TrackStripWriter strips;
  private final SpeedCurves speeds;

  LineChartWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.words = lineside.words();
    this.line = new LineTrack(plan.assignment(), plan.ceiling(), lineside);
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
    List<LineChart.Step> steps = line.steps(from, to);
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
        line.says(track, steps, begun.size()),
        axis.top(),
        axis.step(),
        steps,
        planned,
        driven ? HeldBands.of(plan, words, from, to) : List.of(),
        points(begun),
        line.structures(from, to),
        line.gaps(from, to),
        line.magnets(from, to),
        line.heads(track),
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
}
