package gradepost.policy;

import gradepost.units.Length;
import gradepost.units.Span;

/**
 * How much speed coasting may cost where no rule of the operator says it.
 *
 * @param placeKeeps power comes off early for a place that is easily found only where the train
 *     keeps this share of its speed
 * @param creepingShare a train that coasts slowly creeps only below this share of what is
 *     permissible
 * @param creepingLongest it creeps for no longer than this
 * @param creepingBefore a lower permissible speed no further ahead than this may be waited for
 */
public record CoastPractice(
    double placeKeeps, double creepingShare, Span creepingLongest, Length creepingBefore) {

  /** Common practice, from memory. */
  public static final CoastPractice USUAL =
      new CoastPractice(0.8, 0.5, new Span(8), new Length(200));
}
