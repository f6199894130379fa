package gradepost.policy;

import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;

/**
 * How a driven run is scored: one point for each thing observed that lies within these bounds.
 *
 * @param early how far before the briefed point the brake may go on
 * @param late how far after it
 * @param speedWithin by how much the speed there may differ from the briefed one
 * @param pressureWithin by how much the first application may
 * @param stopShort how far short of its mark the train may stand
 * @param stopPast how far past it
 * @param overspeed less than this over the permissible speed is no fault: nobody reads an
 *     instrument better
 * @param overspeedFor nor is what lasts no longer than this, where it was recorded
 * @param leastObserved share of what could be observed that has to be, for a result
 * @param passScore share of the points that passes
 * @param fails what fails the ride whatever its score
 * @param recorder what is believed of a recorder
 */
public record RideRules(
    Length early,
    Length late,
    Speed speedWithin,
    Pressure pressureWithin,
    Length stopShort,
    Length stopPast,
    Speed overspeed,
    Span overspeedFor,
    double leastObserved,
    double passScore,
    List<RideFault> fails,
    RecorderRules recorder) {
  public RideRules {
    fails = List.copyOf(fails);
  }
}
