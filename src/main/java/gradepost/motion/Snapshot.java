package gradepost.motion;

import org.jspecify.annotations.Nullable;

/** The whole state of a train under way, handles and cylinders included. */
public final class Snapshot {
  final double timeS;
  final double atM;
  final double speedMps;
  final int notch;
  final @Nullable TrainBrake rig;
  final CylinderPressure cylinder;
  final Charge charge = new Charge();

  Snapshot(double timeS, double atM, double speedMps, int notch, BrakeForce brake) {
    this.timeS = timeS;
    this.atM = atM;
    this.speedMps = speedMps;
    this.notch = notch;
    this.rig = brake.rig();
    this.cylinder = brake.saveTo(charge);
  }

  /** Time since the run began, seconds. */
  public double timeS() {
    return timeS;
  }

  /** Distance run of the front, metres. */
  public double atM() {
    return atM;
  }

  /** Speed, metres a second. */
  public double speedMps() {
    return speedMps;
  }

  /** Brake pressure that is asked for, pascals. */
  public double demandPa() {
    return cylinder.demandPa();
  }

  /** Index of the notch, −1 for off. */
  public int notch() {
    return notch;
  }

  /**
   * Whether no brake is on, coming on or going off, and none has taken from its reservoirs: such a
   * train is known by its place, its speed and its notch.
   */
  public boolean unbraked() {
    boolean settled = rig == null || cylinder.settled(timeS, rig.lastDelayS());
    return demandPa() == 0 && settled && charge.untouched();
  }
}
