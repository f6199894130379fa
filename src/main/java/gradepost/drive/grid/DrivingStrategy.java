package gradepost.drive.grid;

import gradepost.drive.brake.PointLimits;
import gradepost.policy.RunRules;

/**
 * In what manner a leg is driven: by the policy's rules, and within them by a guide.
 *
 * @param coastS power is off at least this long before a braking point, seconds
 * @param limits where the brake has to be on by
 */
public record DrivingStrategy(
    RunRules run, double coastS, ControlProfile guide, PointLimits limits) {

  /** As the policy has it. */
  public static DrivingStrategy of(RunRules run) {
    return new DrivingStrategy(
        run, run.coastBeforeBraking().seconds(), ControlProfile.NONE, PointLimits.NONE);
  }

  /** With longer coasting before a braking; never less than the policy asks. */
  public DrivingStrategy coasting(double seconds) {
    return new DrivingStrategy(
        run, Math.max(seconds, run.coastBeforeBraking().seconds()), guide, limits);
  }

  /** By another guide. */
  public DrivingStrategy by(ControlProfile other) {
    return new DrivingStrategy(run, coastS, other, limits);
  }

  /** With other places by which the brake has to be on. */
  public DrivingStrategy within(PointLimits others) {
    return new DrivingStrategy(run, coastS, guide, others);
  }
}
