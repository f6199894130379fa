package gradepost.briefing;

import gradepost.briefing.chart.ApproachChart;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One approach on one page.
 *
 * @param id target of links
 * @param target the headline's first sentence: what it is, and where
 * @param headline what it is, where, from what speed, on what track
 * @param marks where each formation stops; empty for a reduction
 * @param points where the brake goes on: one, or up a terminal platform several; none where the
 *     train needs no brake
 * @param ladders one for each point; where there is none, the speeds on the way
 * @param bySpeed where to brake from another speed, for each point
 * @param spread where runs end that the driver corrects; empty where not computed
 * @param plate the boxes of its page; empty where a row among the lower speeds tells all of it
 * @param unbraked at what speed a lower speed is met without a brake; then what a faster train
 *     does, and what else there is to that; else empty
 * @param changed which of its other parts differ from the issue before: headline, marks, findings,
 *     unbraked, go-by, answer, spread, speeds, fails, brake-at
 */
public record ApproachPage(
    String id,
    String number,
    String title,
    String target,
    String headline,
    String marks,
    ApproachChart chart,
    List<ActionLine> actions,
    List<String> unbraked,
    List<Point> points,
    List<Table> ladders,
    List<Table> bySpeed,
    List<String> spread,
    List<String> findings,
    Optional<Plate> plate,
    List<String> changed) {

  /**
   * A braking point, and what if the brake gives nothing there.
   *
   * @param number of its line
   * @param question "If the … gives nothing at 3:"; empty where the stock has no other brake
   * @param rail the state of the rail that the answer is for, "On … rail:"
   * @param answer what else there is to it than the ladder tells
   * @param grave whether the first fallback does not hold
   * @param last the last place of the brake to use; empty where it has none
   * @param goBy the cues: by day, by night, by the clock, and the backstop
   */
  public record Point(
      String number,
      String question,
      String rail,
      String firstAnswer,
      List<String> answer,
      String last,
      boolean grave,
      List<Fact> goBy) {
    public Point {
      answer = List.copyOf(answer);
      goBy = List.copyOf(goBy);
    }
  }

  /**
   * One numbered instruction.
   *
   * @param when what it waits for, where that is not its place; then the place is only about right
   * @param changed since the issue before
   */
  public record ActionLine(
      String number,
      String todo,
      String when,
      String where,
      String see,
      String speed,
      String gauge,
      String fromLast,
      boolean key,
      boolean changed) {

    /** A line as in the issue before. */
    public ActionLine(
        String number,
        String todo,
        String when,
        String where,
        String see,
        String speed,
        String gauge,
        String fromLast,
        boolean key) {
      this(number, todo, when, where, see, speed, gauge, fromLast, key, false);
    }

    /** The same line, marked. */
    public ActionLine marked(boolean differs) {
      return new ActionLine(number, todo, when, where, see, speed, gauge, fromLast, key, differs);
    }
  }

  /** What its plate has no room for: it stands in the reference. */
  public List<Table> inFull() {
    Optional<String> onPlate = plate.flatMap(Plate::fails).map(Table::id);
    return Stream.concat(
            ladders.stream().filter(t -> !onPlate.equals(Optional.of(t.id()))), bySpeed.stream())
        .toList();
  }

  /** The same page with these lines, and these parts of it marked. */
  public ApproachPage marked(
      List<ActionLine> lines, List<Table> rungs, List<Table> speeds, List<String> parts) {
    return new ApproachPage(
        id, number, title, target, headline, marks, chart, lines, unbraked, points, rungs, speeds,
        spread, findings, plate, parts);
  }

  public ApproachPage {
    actions = List.copyOf(actions);
    unbraked = List.copyOf(unbraked);
    changed = List.copyOf(changed);
    points = List.copyOf(points);
    ladders = List.copyOf(ladders);
    bySpeed = List.copyOf(bySpeed);
    spread = List.copyOf(spread);
    findings = List.copyOf(findings);
  }
}
