package gradepost.briefing;

import java.util.List;

/**
 * One approach on one page.
 *
 * @param id target of links
 * @param headline what it is, where, from what speed, on what track
 * @param marks where each formation stops; empty for a reduction
 * @param question "If the … gives nothing at 3:"; empty where the train needs no brake
 * @param answer its sentences, the one that counts first
 * @param graveAnswer whether the first fallback does not hold
 */
public record ApproachPage(
    String id,
    String number,
    String title,
    String headline,
    String marks,
    ApproachChart chart,
    List<ActionLine> actions,
    String question,
    String firstAnswer,
    List<String> answer,
    boolean graveAnswer,
    Table ladder,
    List<String> notes,
    List<String> findings) {

  /**
   * One numbered instruction.
   *
   * @param when what it waits for, where that is not its place; then the place is only about right
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
      boolean key) {}

  public ApproachPage {
    actions = List.copyOf(actions);
    answer = List.copyOf(answer);
    notes = List.copyOf(notes);
    findings = List.copyOf(findings);
  }
}
