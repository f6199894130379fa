package gradepost.policy;

import gradepost.units.Span;

/**
 * How a driver is taken to correct a braking, and where the brake goes on so that he can.
 *
 * @param looksEvery so often he looks at place and speed while he brakes
 * @param reaction so long after a look he moves the handle
 * @param lateShare of runs that are corrected no more than this share may be late; where more might
 *     be, the brake goes on earlier
 * @param leavesNextBrake whether the brake goes on so early that the next brake still meets the
 *     target when this one fails
 */
public record CorrectionPractice(
    Span looksEvery, Span reaction, double lateShare, boolean leavesNextBrake) {

  /** Common practice, from memory. */
  public static final CorrectionPractice USUAL =
      new CorrectionPractice(new Span(2), new Span(1), 0.005, true);

  public CorrectionPractice {
    if (!(looksEvery.seconds() > 0)) {
      throw new IllegalArgumentException("a driver looks now and then: " + looksEvery);
    }
  }
}
