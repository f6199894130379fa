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
 */
public record TaughtRules(
    Span appliedAgain, Acceleration notchGives, Span deadNotch, int movements) {

  /** Common practice, from memory. */
  public static final TaughtRules USUAL =
      new TaughtRules(new Span(20), new Acceleration(0.01), new Span(5), 12);
}
