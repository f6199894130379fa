package gradepost.policy;

import gradepost.units.Length;

/**
 * What counts as a warning of a lower speed, and as too often late at its board.
 *
 * @param announcedWithin a junction signal announces pointwork that lies no further behind it
 * @param late of runs in which nothing is corrected no more than this share should be late at a
 *     board
 */
public record WarningPractice(Length announcedWithin, double late) {

  /**
   * A signal within 1 km, from memory; 16 % is what a normal spread has beyond one standard
   * deviation.
   */
  public static final WarningPractice USUAL = new WarningPractice(new Length(1000), 0.16);
}
