package gradepost.policy;

import gradepost.units.Length;
import gradepost.units.Span;
import gradepost.units.Speed;

/**
 * What is usual at landmarks and other cues, gaps in the conductor rail and running brake tests.
 *
 * @param alikeWithin landmarks of the same name no further apart than this are easily mistaken
 * @param overGap slower than this over a gap that the train does not span, it may come to stand in
 *     it
 * @param testHeld how long the brake is held in a running brake test
 * @param testWithin the speed of a running brake test is met as closely as this
 * @param cueWithin a driver counts no longer than this from a cue to a braking point
 */
public record LinePractice(
    Length alikeWithin, Speed overGap, Span testHeld, Speed testWithin, Span cueWithin) {

  /** Common practice, from memory. */
  public static final LinePractice USUAL =
      new LinePractice(new Length(800), Speed.ofMph(15), new Span(5), Speed.ofMph(5), new Span(15));
}
