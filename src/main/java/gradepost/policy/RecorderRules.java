package gradepost.policy;

import gradepost.units.Acceleration;
import gradepost.units.Span;

/**
 * What is believed of a recorder that counts by a wheel.
 *
 * @param scaleWithin by how much its metre may differ from one on the road, as a share
 * @param slip by how much a wheel runs too fast or too slowly where it slips or slides, as a share
 * @param slipFrom where speed changes by as much as this, a wheel may slip or slide
 * @param clockWithin by how much the time of a line may be wrong
 * @param longestGap what lies between two lines further apart than this was not observed
 */
public record RecorderRules(
    double scaleWithin, double slip, Acceleration slipFrom, Span clockWithin, Span longestGap) {
  /**
   * Of an operator who says nothing else. Wheels are turned down by some 6 % of their diameter over
   * their life (common practice), and a recorder is set for the middle of that.
   */
  public static final RecorderRules USUAL =
      new RecorderRules(0.03, 0.05, new Acceleration(0.3), new Span(0.2), new Span(5));
}
