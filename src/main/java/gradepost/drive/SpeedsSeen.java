package gradepost.drive;

/**
 * The lowest and the highest speed since the last handle movement: what the train has had already
 * would tell him to act too soon.
 */
final class SpeedsSeen {
  private double lowestMps;
  private double highestMps;

  void from(double mps) {
    lowestMps = mps;
    highestMps = mps;
  }

  void see(double mps) {
    lowestMps = Math.min(lowestMps, mps);
    highestMps = Math.max(highestMps, mps);
  }

  /** Whether this speed is met for the first time, falling. */
  boolean fellTo(double mps) {
    return lowestMps >= mps - 1e-6;
  }

  /** Whether this speed is met for the first time, rising. */
  boolean roseTo(double mps) {
    return highestMps <= mps + 1e-6;
  }
}
