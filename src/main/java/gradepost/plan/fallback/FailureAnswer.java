package gradepost.plan.fallback;

import gradepost.stock.BrakeSystem;

/**
 * What happens when the service brake gives nothing at the planned point, and this brake is asked
 * for after the noticing time.
 *
 * @param askedAtM where it is asked for
 * @param askedSpeedMps planned speed there, with the speed of coasting up to it
 * @param met where the train comes to the target's speed
 * @param speedAtTargetMps speed at the target itself; not above the target's when it holds
 */
public record FailureAnswer(
    BrakeSystem brake, double askedAtM, double askedSpeedMps, Met met, double speedAtTargetMps) {
  /** Whether the target is met in time. */
  public boolean holds() {
    return met.inTime();
  }
}
