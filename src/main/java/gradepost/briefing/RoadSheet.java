package gradepost.briefing;

import gradepost.briefing.chart.RoadChart;

/**
 * One sheet of the whole road: the run at a glance, and below it a row for each braking point.
 *
 * @param id the target of links
 * @param others whether the lower speeds and other routes stand at its foot
 */
public record RoadSheet(String id, String title, RoadChart chart, Table table, boolean others) {
  /** The same with other marks in its table. */
  public RoadSheet with(Table marked) {
    return new RoadSheet(id, title, chart, marked, others);
  }
}
