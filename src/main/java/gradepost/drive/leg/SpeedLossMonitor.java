package gradepost.drive.leg;

import gradepost.motion.Recorder;

/** Watches how much speed is lost where power is spared. */
final class SpeedLossMonitor implements Recorder {
  private static final double KEPT = 0.6;

  private final double fromM;
  private final double toM;
  private double firstMps = Double.NaN;
  private boolean lost;

  SpeedLossMonitor(double fromM, double toM) {
    this.fromM = fromM;
    this.toM = toM;
  }

  @Override
  public void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
    if (atM >= fromM && atM <= toM) {
      firstMps = Double.isNaN(firstMps) ? speedMps : firstMps;
      lost |= speedMps < KEPT * firstMps;
    }
  }

  boolean lost() {
    return lost;
  }
}
