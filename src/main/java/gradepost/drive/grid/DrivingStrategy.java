package gradepost.drive.grid;

import gradepost.drive.brake.PointLimits;
import gradepost.policy.RunRules;
import java.util.List;

/**
 * In what manner a leg is driven: by the policy's rules, and within them by a guide.
 *
 * @param coastS power is off at least this long before a braking point, seconds
 * @param limits where the brake has to be on by
 * @param holds where the speed is held as one instruction, in order
 */
public record DrivingStrategy(
    RunRules run,
    double coastS,
    ControlProfile guide,
    PointLimits limits,
    List<HeldStretch> holds) {
  public DrivingStrategy {
    holds = List.copyOf(holds);
  }

  /** Where no speed is held as one instruction. */
  public DrivingStrategy(RunRules run, double coastS, ControlProfile guide, PointLimits limits) {
    this(run, coastS, guide, limits, List.of());
  }

  /** As the policy has it. */
  public static DrivingStrategy of(RunRules run) {
    return new DrivingStrategy(
        run, run.coastBeforeBraking().seconds(), ControlProfile.NONE, PointLimits.NONE);
  }

  /** With longer coasting before a braking; never less than the policy asks. */
  public DrivingStrategy coasting(double seconds) {
    return new DrivingStrategy(
        run, Math.max(seconds, run.coastBeforeBraking().seconds()), guide, limits, holds);
  }

  /** By another guide. */
  public DrivingStrategy by(ControlProfile other) {
    return new DrivingStrategy(run, coastS, other, limits, holds);
  }

  /** With other places by which the brake has to be on. */
  public DrivingStrategy within(PointLimits others) {
    return new DrivingStrategy(run, coastS, guide, others, holds);
  }

  /** With these stretches along which the speed is held. */
  public DrivingStrategy holding(List<HeldStretch> others) {
    return new DrivingStrategy(run, coastS, guide, limits, others);
  }
}
