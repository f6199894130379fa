package gradepost.drive.brake;

import gradepost.policy.RunRules;
import gradepost.units.Speed;

/**
 * The policy's speeds under a ceiling, in whole units: where power comes off and is taken again,
 * where the brake checks the speed and where it comes off again.
 */
public record Band(RunRules run, double unitMps) {
  /** Under the checking speed by a whole unit at least. */
  public double offMps(double ceilingMps) {
    double off = printable(below(ceilingMps, run.offBelow(), 0.8));
    return Math.min(off, printable(checkFromMps(ceilingMps) - unitMps));
  }

  /** Two whole units under where it comes off at least. */
  public double onMps(double ceilingMps) {
    double on = printable(below(ceilingMps, run.onBelow(), 0.7));
    return Math.min(on, printable(offMps(ceilingMps) - 2 * unitMps));
  }

  /** Speed from which a train that gathers speed is checked, m/s. */
  public double checkFromMps(double ceilingMps) {
    return printable(below(ceilingMps, run.checkFrom(), 0.9));
  }

  /** Speed down to which it is checked, m/s; below the speed from which it is. */
  public double checkToMps(double ceilingMps) {
    double to = printable(below(ceilingMps, run.checkTo(), 0.7));
    return Math.min(to, printable(checkFromMps(ceilingMps) - 2 * unitMps));
  }

  /**
   * So much below the ceiling, but not below a share of it: the bands of low ceilings are narrow.
   */
  private static double below(double ceilingMps, Speed by, double share) {
    return Math.max(ceilingMps - by.metresPerSecond(), share * ceilingMps);
  }

  private double printable(double mps) {
    return Math.max(1, Math.floor(mps / unitMps + Slack.UNITS)) * unitMps;
  }
}
