package gradepost.briefing.line;

import gradepost.briefing.chart.StripChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.word.Words;
import gradepost.pack.TemporaryRestriction;
import gradepost.plan.Plan;
import gradepost.task.CeilingStep;
import gradepost.units.Exact;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The whole direction, cut into rows of one scale. */
public final class StripWriter {
  /** What a row has room for, upright and legible. */
  private static final int MOST_NAMES = 48;

  private final Plan plan;
  private final Words words;
  private final TrackStripWriter strips;
  private final Lineside lineside;

  public StripWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.words = lineside.words();
    this.strips = new TrackStripWriter(plan.assignment(), lineside);
    this.lineside = lineside;
  }

  /** The rows of the strip, for the part of the briefing with this identity. */
  public List<StripChart> rows(String part) {
    double length = words.path().lengthM();
    double row = words.units() == UnitStyle.MILES ? 2.6 * Exact.MILE_M : 4200;
    int count = (int) Math.max(1, Math.ceil(length / row));
    while (count < 40 && crowded(length / count)) {
      count++;
    }
    double each = length / count;
    List<StripChart> out = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      out.add(row(part + "-strip" + (i + 1), i * each, (i + 1) * each, each));
    }
    return out;
  }

  /** The rows again, each with equal steps between what is met. */
  public List<StripChart> evened(String part) {
    List<StripChart> out = new ArrayList<>();
    for (StripChart row : rows(part)) {
      out.add(
          SchematicStrip.of(
              row,
              part + "-even" + (out.size() + 1),
              words.text("chart.evened", row.name()),
              words.text("chart.evened.says", row.says())));
    }
    return out;
  }

  private boolean crowded(double each) {
    for (double from = 0; from < words.path().lengthM() - 1; from += each) {
      if (strips.between(from, from + each) > MOST_NAMES) {
        return true;
      }
    }
    return false;
  }

  private StripChart row(String id, double from, double to, double scale) {
    double top = 10;
    for (CeilingStep s : plan.ceiling()) {
      top = Math.max(top, words.speedValue(s.speedMps()));
    }
    List<StripChart.Step> steps = new ArrayList<>();
    List<TrackStrip.Stretch> named = new ArrayList<>();
    for (CeilingStep s : plan.ceiling()) {
      if (s.toM() <= from || s.fromM() >= to) {
        continue;
      }
      double a = Math.max(from, s.fromM());
      double b = Math.min(to, s.toM());
      String number = words.number(s.speedMps());
      double cut = a;
      for (TrackStrip.Stretch notice : notices(s, a, b)) {
        if (notice.fromM() > cut) {
          steps.add(step(cut, notice.fromM(), s, number, false));
          number = "";
        }
        steps.add(step(notice.fromM(), notice.toM(), s, number, true));
        number = "";
        cut = notice.toM();
        named.add(notice);
      }
      if (cut < b) {
        steps.add(step(cut, b, s, number, false));
      }
    }
    TrackStrip track = strips.strip(from, to);
    String stations =
        track.platforms().stream()
            .map(TrackStrip.Stretch::text)
            .distinct()
            .collect(Collectors.joining(", "));
    return new StripChart(
        id,
        words.text("chart.strip", words.place(from), words.place(to)),
        words.text(
            "chart.strip.says",
            words.place(from),
            words.place(to),
            stations.isEmpty() ? words.text("chart.strip.no-station") : stations,
            steps.stream()
                .map(StripChart.Step::text)
                .filter(t -> !t.isEmpty())
                .collect(Collectors.joining(", ")),
            words.units().speedUnit()),
        scale,
        words.units().speedUnit(),
        Math.ceil(top / 10) * 10,
        steps,
        named,
        HeldBands.of(plan, words, from, to),
        track);
  }

  private StripChart.Step step(
      double from, double to, CeilingStep of, String number, boolean notice) {
    return new StripChart.Step(from, to, words.speedValue(of.speedMps()), number, notice);
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
