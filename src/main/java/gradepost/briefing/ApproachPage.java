package gradepost.briefing;

import java.util.List;

/**
 * One approach on one page.
 *
 * @param id target of links
 * @param target the headline's first sentence: what it is, and where
 * @param headline what it is, where, from what speed, on what track
 * @param marks where each formation stops; empty for a reduction
 * @param question "If the … gives nothing at 3:"; empty where the train needs no brake
 * @param rail the state of the rail that the answer is for, "On … rail:"
 * @param answer its sentences, the one that counts first
 * @param goBy the cues at the braking point: by day, by night, by the clock, and the backstop
 * @param spread where the train comes to when nothing is corrected; empty where not computed
 * @param unbraked at what speed a lower speed is met without a brake, and what if faster; else
 *     empty
 * @param graveAnswer whether the first fallback does not hold
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
    String unbraked,
    String question,
    String rail,
    String firstAnswer,
    List<String> answer,
    boolean graveAnswer,
    Table ladder,
    List<Fact> goBy,
    List<SpreadChart> spread,
    List<String> findings) {

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

  /** The same page with these lines. */
  public ApproachPage with(List<ActionLine> lines, Table rungs) {
    return new ApproachPage(
        id,
        number,
        title,
        target,
        headline,
        marks,
        chart,
        lines,
        unbraked,
        question,
        rail,
        firstAnswer,
        answer,
        graveAnswer,
        rungs,
        goBy,
        spread,
        findings);
  }

  public ApproachPage {
    actions = List.copyOf(actions);
    answer = List.copyOf(answer);
    goBy = List.copyOf(goBy);
    spread = List.copyOf(spread);
    findings = List.copyOf(findings);
  }
}
