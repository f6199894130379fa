package gradepost.drive.leg;

import gradepost.drive.brake.Slack;

/**
 * The lowest and the highest speed since the last handle movement: what the train has had already
 * would tell him to act too soon.
 */
final class SpeedsSeen {
  /** A speed that was so near was met. */
  private static final double MET_MPS = 0.001;

  private double lowestMps;
  private double highestMps;

  SpeedsSeen() {}

  SpeedsSeen(SpeedsSeen other) {
    lowestMps = other.lowestMps;
    highestMps = other.highestMps;
  }

  /** A handle is moved at this speed. */
  void from(double mps) {
    lowestMps = mps;
    highestMps = mps;
  }

  void see(double mps) {
    lowestMps = Math.min(lowestMps, mps);
    highestMps = Math.max(highestMps, mps);
  }

  /** Whether the train, falling to this speed now, meets it for the first time. */
  boolean fallsTo(double mps, double nowMps) {
    return nowMps >= mps - Slack.SPEED_MPS && lowestMps > mps + MET_MPS;
  }

  /** Whether the train, rising to this speed now, meets it for the first time. */
  boolean risesTo(double mps, double nowMps) {
    return nowMps <= mps + Slack.SPEED_MPS && highestMps < mps - MET_MPS;
  }
}
