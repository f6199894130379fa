package gradepost.briefing.line;

import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.word.Words;
import gradepost.pack.TemporaryRestriction;
import gradepost.route.Structure;
import gradepost.task.Assignment;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What lies along a line whoever drives it: speeds, structures, gaps, magnets; and it in words. */
final class LineTrack {
  private final Assignment assignment;
  private final List<CeilingStep> ceiling;
  private final Words words;
  private final Lineside lineside;

  /**
   * @param ceiling the permissible speed of the train
   */
  LineTrack(Assignment assignment, List<CeilingStep> ceiling, Lineside lineside) {
    this.assignment = assignment;
    this.ceiling = ceiling;
    this.words = lineside.words();
    this.lineside = lineside;
  }

  String says(TrackStrip track, List<LineChart.Step> steps, int points) {
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

  List<TrackStrip.Stretch> structures(double from, double to) {
    return assignment.route().structures().stream()
        .map(s -> lineside.over(s, s.extent()))
        .filter(o -> o.toM() >= from && o.fromM() <= to)
        .map(o -> cut(o.fromM(), o.toM(), from, to, kind(o.what())))
        .toList();
  }

  private String kind(Structure structure) {
    return words.text("structure." + TrackStripWriter.lower(structure.kind()));
  }

  List<TrackStrip.Stretch> gaps(double from, double to) {
    return assignment.route().railGaps().stream()
        .filter(g -> lineside.applies(g.applies()))
        .map(g -> lineside.over(g, g.extent()))
        .filter(o -> o.toM() >= from && o.fromM() <= to)
        .map(o -> cut(o.fromM(), o.toM(), from, to, o.what().name()))
        .toList();
  }

  private static TrackStrip.Stretch cut(double a, double b, double from, double to, String text) {
    return new TrackStrip.Stretch(Math.max(from, a), Math.min(to, b), text, true);
  }

  List<Double> magnets(double from, double to) {
    return lineside.signals().stream()
        .flatMap(s -> s.what().aws().stream())
        .map(a -> words.path().metresAt(a))
        .filter(m -> m >= from && m <= to)
        .toList();
  }

  List<LineChart.Step> steps(double from, double to) {
    List<LineChart.Step> steps = new ArrayList<>();
    for (CeilingStep s : ceiling) {
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
    double train = assignment.formation().lengthM();
    List<TrackStrip.Stretch> out = new ArrayList<>();
    double cut = from;
    for (String cause : Stream.concat(Stream.of(step.cause()), step.then().stream()).toList()) {
      for (TemporaryRestriction r : assignment.restrictions()) {
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

  /** What the columns of a chart are called. */
  LineChart.Heads heads(TrackStrip track) {
    return new LineChart.Heads(
        words.units().speedUnit(),
        track.names().slopes(),
        track.names().bends(),
        words.text("line.left"),
        words.text("line.right"));
  }
}
