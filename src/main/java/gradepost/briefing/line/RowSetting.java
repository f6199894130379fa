package gradepost.briefing.line;

import gradepost.briefing.LineSheet;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.Spreading;
import java.util.ArrayList;
import java.util.List;

/**
 * How the rows of a sheet stand on the paper: in lines of a known width, each as nearly level with
 * its place on the drawing as the rows about it allow. In CSS pixels, 96 to the inch; the widths
 * are those of the columns in {@code paper.css}.
 */
public final class RowSetting {
  /** Of the type in the rows. */
  static final double TYPE_PX = 10 * 96 / 72.0;

  /** From line to line. */
  static final int LINE_PX = 14;

  /** A rule above a row. */
  static final int ROW_PX = 1;

  /** The heads of the columns. */
  static final int HEAD_PX = 26;

  /** Below the heads to the foot of the sheet. */
  static final int ROOM_PX = 967;

  /** The same where a heading and a few words come first. */
  static final int ROOM_BELOW_WORDS_PX = 858;

  /** Text of the columns, air left out. */
  public static final int PLACE_PX = 62;

  /** What is there: over both columns, above what there is to do. */
  public static final int WHAT_PX = 326;

  /** What is there, where it stands to the left of what there is to do. */
  static final int BESIDE_PX = 29;

  /** What to do. */
  public static final int TODO_PX = 293;

  /**
   * A row in lines; how high it is without the air below it.
   *
   * @param beside whether what is there is so short that it stands beside what there is to do
   */
  record Lines(List<String> place, List<String> what, List<String> todo, boolean beside) {
    int heightPx() {
      int told = beside ? Math.max(what.size(), todo.size()) : what.size() + todo.size();
      return ROW_PX + Math.max(1, Math.max(place.size(), told)) * LINE_PX;
    }

    /** The same with nothing beside what there is to do. */
    Lines below() {
      return new Lines(place, what, todo, false);
    }
  }

  /**
   * @param heading whether the first that is there is a station, which has lines of its own
   * @param between what is set between two things that are there
   */
  static Lines lines(
      String place, List<String> what, List<String> todo, boolean heading, String between) {
    int own = heading ? 1 : 0;
    List<String> there = new ArrayList<>();
    what.subList(0, own).forEach(t -> there.addAll(LineBreaks.HEAVY.of(t, WHAT_PX / TYPE_PX)));
    if (what.size() > own) {
      String rest = String.join(between, what.subList(own, what.size()));
      there.addAll(LineBreaks.PLAIN.of(rest, WHAT_PX / TYPE_PX));
    }
    List<String> done = new ArrayList<>();
    todo.forEach(t -> done.addAll(LineBreaks.HEAVY.of(t, TODO_PX / TYPE_PX)));
    boolean beside =
        own == 0
            && !done.isEmpty()
            && there.size() == 1
            && LineBreaks.width(there.get(0), false) <= BESIDE_PX / TYPE_PX;
    return new Lines(LineBreaks.PLAIN.of(place, PLACE_PX / TYPE_PX), there, done, beside);
  }

  /**
   * Where the rows begin: the first at the top, all others as near to their places as may be. A row
   * that is higher than the sheet runs out of it.
   */
  static List<LineChart.Level> levels(
      List<Double> places, List<Integer> heights, double fromM, double toM, int roomPx) {
    int n = places.size();
    double[] wanted = new double[n];
    double[] sizes = new double[n];
    for (int i = 0; i < n; i++) {
      wanted[i] = (places.get(i) - fromM) / (toM - fromM) * roomPx;
      sizes[i] = Math.min(heights.get(i), roomPx);
    }
    double[] tops = Spreading.of(wanted, sizes, 0, roomPx);
    List<LineChart.Level> out = new ArrayList<>();
    int least = 0;
    for (int i = 0; i < n; i++) {
      int top = i == 0 ? 0 : Math.max(least, (int) Math.floor(tops[i]));
      out.add(new LineChart.Level(places.get(i), top));
      least = top + (int) sizes[i];
    }
    return out;
  }

  static LineSheet.Set set(Lines lines, int heightPx) {
    return new LineSheet.Set(lines.place(), lines.what(), lines.todo(), lines.beside(), heightPx);
  }

  private RowSetting() {}
}
