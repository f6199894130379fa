package gradepost.briefing;

import gradepost.briefing.chart.RoadChart;
import java.util.List;

/**
 * One sheet of the whole road: the run at a glance, and below it a row for each braking point.
 *
 * @param id the target of links
 * @param rails what each state of the rail is, other than the planned one
 * @param railsBeside whether there is room for that beside the title of the part
 * @param notes what is told below the rows, a sentence each
 * @param others whether the lower speeds and other routes stand at its foot
 */
public record RoadSheet(
    String id,
    String title,
    String rails,
    boolean railsBeside,
    RoadChart chart,
    Table table,
    List<String> notes,
    boolean others) {
  public RoadSheet {
    notes = List.copyOf(notes);
  }

  /** The same with other marks in its table. */
  public RoadSheet with(Table marked) {
    return new RoadSheet(id, title, rails, railsBeside, chart, marked, notes, others);
  }
}
