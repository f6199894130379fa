package gradepost.drive.brake;

import gradepost.motion.Recorder;

/** Watches how much speed is lost where power is spared. */
public final class SpeedLossMonitor implements Recorder {
  private final double fromM;
  private final double toM;
  private final double keeps;
  private double firstMps = Double.NaN;
  private boolean lost;

  /**
   * Over a stretch of the run.
   *
   * @param keeps the share of its speed that a train keeps at least
   */
  public SpeedLossMonitor(double fromM, double toM, double keeps) {
    this.keeps = keeps;
    this.fromM = fromM;
    this.toM = toM;
  }

  @Override
  public void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
    if (atM >= fromM && atM <= toM) {
      firstMps = Double.isNaN(firstMps) ? speedMps : firstMps;
      lost |= speedMps < keeps * firstMps;
    }
  }

  /** Whether the train fell below its share along the stretch. */
  public boolean lost() {
    return lost;
  }
}
