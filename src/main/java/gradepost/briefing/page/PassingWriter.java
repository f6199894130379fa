package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.chart.TrackStrip.Sign;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.plan.Approach;
import gradepost.plan.Run;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * For an approach without a brake, what there is to watch: the speed that the planned run has at
 * what is passed, each rounded down, but where the lower speed begins. Whoever is faster there,
 * with the same handles, is faster at the target too.
 */
final class PassingWriter {
  private static final int MOST_ROWS = 10;

  /** Nearer to the row after it than this share of the way, a place is left out. */
  private static final double APART = 0.06;

  private final Words words;
  private final Run run;

  PassingWriter(Words words, Run run) {
    this.words = words;
    this.run = run;
  }

  /**
   * The last places before the target, and the target.
   *
   * @param track as drawn in the chart
   */
  Table table(String id, Approach approach, TrackStrip track) {
    Tables table = new Tables(words, id, "passing");
    List<Map.Entry<Double, String>> met = new ArrayList<>(met(approach, track).entrySet());
    double nearest = APART * (approach.target().atM() - start(approach, track));
    List<Map.Entry<Double, String>> kept = new ArrayList<>();
    double next = Double.POSITIVE_INFINITY;
    for (int i = met.size() - 1; i >= 0 && kept.size() < MOST_ROWS; i--) {
      if (next - met.get(i).getKey() >= nearest) {
        kept.add(0, met.get(i));
        next = met.get(i).getKey();
      }
    }
    for (Map.Entry<Double, String> m : kept) {
      double at = m.getKey();
      double speed = run.speedAt(at);
      boolean begins = at >= approach.target().atM();
      table.row(
          words.place(at), m.getValue(), begins ? words.numberAtMost(speed) : words.number(speed));
    }
    return table.build();
  }

  private static double start(Approach approach, TrackStrip track) {
    return Math.max(approach.fromM(), track.fromM());
  }

  /** In the order of travel; what stands at one place is one entry. */
  private static Map<Double, String> met(Approach approach, TrackStrip track) {
    Map<Double, String> out = new LinkedHashMap<>();
    double from = start(approach, track);
    double to = approach.target().atM();
    track.signs().stream()
        .filter(s -> s.atM() > from && s.atM() <= to)
        .sorted(Comparator.comparingDouble(Sign::atM))
        .forEach(s -> out.merge(s.atM(), s.text(), (a, b) -> a + ", " + b));
    return out;
  }
}
