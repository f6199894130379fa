package gradepost.drive.brake;

import gradepost.motion.EvenChange;
import gradepost.motion.Recorder;
import gradepost.task.Target;
import java.util.List;

/** Watches the reductions that lie before a target. */
public final class ReductionMonitor implements Recorder {
  private final List<Target> before;
  private double lastM = Double.NaN;
  private double lastMps;
  private double marginM = Double.POSITIVE_INFINITY;

  public ReductionMonitor(List<Target> before) {
    this.before = before;
  }

  @Override
  public void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
    if (!Double.isNaN(lastM) && atM > lastM) {
      for (Target target : before) {
        if (target.atM() > lastM && target.atM() <= atM) {
          double there = EvenChange.speedMps(lastM, lastMps, atM, speedMps, target.atM());
          double over = there - target.speedMps();
          marginM = Math.min(marginM, -20 * over);
        }
      }
    }
    lastM = atM;
    lastMps = speedMps;
  }

  /**
   * The least margin at any of them, as a length in metres: negative where one was passed too fast,
   * infinite where none was passed.
   */
  public double marginM() {
    return marginM;
  }
}
