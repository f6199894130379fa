package gradepost.policy;

import gradepost.units.Acceleration;
import gradepost.units.Span;
import gradepost.units.Speed;

/**
 * How the brake is used where no rule of the operator says it.
 *
 * @param eased an eased brake still slows the train by this at least
 * @param feltAbove the first application is strong enough to be felt this much above the speed that
 *     is aimed for
 * @param lowestAim a brake aims no lower than this share of a lower speed, by the policy's margin
 * @param lowestRelease nor is it kept on longer than down to this share, to spare another braking
 * @param staysOnFrom the brake stays on past a board behind which the train would gather speed by
 *     more than this
 * @param brakedLowerFrom behind a board where it would gather more than this, and the brake does
 *     not stay on, it is braked as far under the lower speed as a checking application goes
 * @param lastEaseAlone up to this share of the speed of the last ease, a train that is about to
 *     stop is braked with the pressure of that ease alone
 * @param offAtLeast a brake is not let go for less than this
 * @param firstHeldLeast the first application is held for this at least, where its time is changed
 *     to stop at the mark
 * @param firstHeldLonger and for so much longer than the technique says at most
 */
public record BrakePractice(
    Acceleration eased,
    Speed feltAbove,
    double lowestAim,
    double lowestRelease,
    Acceleration staysOnFrom,
    Acceleration brakedLowerFrom,
    double lastEaseAlone,
    Span offAtLeast,
    Span firstHeldLeast,
    Span firstHeldLonger) {

  /** Common practice, from memory. */
  public static final BrakePractice USUAL =
      new BrakePractice(
          new Acceleration(0.12),
          new Speed(5),
          0.7,
          0.5,
          new Acceleration(0.06),
          new Acceleration(0.02),
          1.3,
          new Span(8),
          new Span(2),
          new Span(25));
}
