package gradepost.policy;

import gradepost.units.Acceleration;
import gradepost.units.Span;

/**
 * What an instructor would not teach. A run that breaks one of these is driven only where none
 * without it was found, and the sheet says so.
 *
 * @param appliedAgain a brake that comes off does not go on again before this
 * @param notchGives a notch that gives less than this at the speed of the train gives nothing
 * @param deadNotch power stays in a notch that gives nothing for no longer than this
 * @param movements of the handles in a mile at most; notching up counts as one
 * @param rows instructions on a plate at most, to stand not counted
 * @param rowsAtTerminal the same where the train stops before buffer stops
 */
public record TaughtRules(
    Span appliedAgain,
    Acceleration notchGives,
    Span deadNotch,
    int movements,
    int rows,
    int rowsAtTerminal) {

  /** With as many instructions on a plate as is usual. */
  public TaughtRules(Span appliedAgain, Acceleration notchGives, Span deadNotch, int movements) {
    this(appliedAgain, notchGives, deadNotch, movements, 7, 10);
  }

  /** Instructions on a plate at most. */
  public int rows(boolean terminal) {
    return terminal ? rowsAtTerminal : rows;
  }

  /** Common practice, from memory. */
  public static final TaughtRules USUAL =
      new TaughtRules(new Span(20), new Acceleration(0.01), new Span(5), 12);
}
