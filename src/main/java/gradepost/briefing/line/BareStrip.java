package gradepost.briefing.line;

import gradepost.briefing.Messages;
import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.word.Words;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import java.util.List;

/** The whole line of an assignment as a sheet of the line draws it, before any run is planned. */
public final class BareStrip {

  /**
   * The chart, from the first place of the path to its last.
   *
   * @param id begins the identities of its parts
   * @param roomPx height below the head, CSS pixels
   */
  public static LineChart of(String id, Assignment assignment, Messages messages, int roomPx) {
    Words words = new Words(messages, assignment.path());
    Lineside lineside = new Lineside(assignment, words);
    List<CeilingStep> ceiling = Ceiling.of(assignment).steps();
    LineTrack line = new LineTrack(assignment, ceiling, lineside);
    double to = words.path().lengthM();
    SpeedCurves.Axis axis = SpeedCurves.axis(ceiling, words, 0, to);
    TrackStrip track = new TrackStripWriter(assignment, lineside).strip(0, to);
    List<LineChart.Step> steps = line.steps(0, to);
    return new LineChart(
        id,
        words.text("line.chart", words.place(0), words.place(to)),
        line.says(track, steps, 0),
        axis.top(),
        axis.step(),
        steps,
        Curve.through(Curve.Kind.PLANNED, words.text("curve.planned"), List.of()),
        List.of(),
        List.of(),
        line.structures(0, to),
        line.gaps(0, to),
        line.magnets(0, to),
        line.heads(track),
        track,
        List.of(),
        RowSetting.HEAD_PX,
        roomPx);
  }

  private BareStrip() {}
}
