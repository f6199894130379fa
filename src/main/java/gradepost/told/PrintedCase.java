package gradepost.told;

import java.util.List;
import java.util.Optional;

/**
 * One application in one state of the rail.
 *
 * @param rail its name
 * @param point empty where there is none
 * @param ownRun whether the figures are for the run that the application before it leaves
 * @param ladder a rung for each brake
 * @param stepLatest before a step up a terminal platform, the last place at which the next brake
 *     still keeps that step; empty where that is no earlier than the one to stand
 * @param answers one for each brake but the service brake
 * @param protection empty where there is no other brake
 */
public record PrintedCase(
    String rail,
    Optional<PrintedPoint> point,
    boolean ownRun,
    List<PrintedRung> ladder,
    Optional<PrintedLatest> stepLatest,
    List<PrintedAnswer> answers,
    Optional<PrintedProtection> protection) {
  public PrintedCase {
    ladder = List.copyOf(ladder);
    answers = List.copyOf(answers);
  }

  /**
   * The brake to use when the service brake fails, and what it does: the first one that suffices;
   * where none does, the last there is. Empty where there is none.
   */
  public Optional<PrintedAnswer> toUse() {
    return answers.stream()
        .filter(PrintedAnswer::suffices)
        .findFirst()
        .or(() -> answers.stream().reduce((a, later) -> later));
  }
}
