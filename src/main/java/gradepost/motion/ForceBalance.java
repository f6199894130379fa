package gradepost.motion;

import gradepost.stock.law.AdhesionLaw;
import gradepost.units.Exact;

/**
 * The balance of forces of a train whose brakes are off: effort as far as adhesion bears it, less
 * running resistance, less what the track does. Adhesion is the same under the whole train.
 *
 * <p>The stepper's {@link Forces} say the same for a train on low-adhesion rail and under brakes,
 * piece by piece; a test holds the two together.
 */
public final class ForceBalance {
  private static final double FASTEST_MPS = 150;
  private static final double STEP_MPS = 0.1;
  private static final int HALVINGS = 40;

  private final Train train;
  private final AdhesionLaw adhesion;

  /**
   * Of this train on this rail.
   *
   * @param adhesion that no notch pulls more than
   */
  public ForceBalance(Train train, AdhesionLaw adhesion) {
    this.train = train;
    this.adhesion = adhesion;
  }

  /** Tractive effort of a notch (−1: off) at a speed, as far as adhesion bears it, newtons. */
  public double effortN(int notch, double speedMps) {
    if (notch < 0) {
      return 0;
    }
    double gripN = adhesion.mu(speedMps) * train.motoredKg() * Exact.G;
    return Math.min(train.effort().get(notch).at(speedMps), gripN);
  }

  /** The same over the inertia of the train, m/s². */
  public double effortMps2(int notch, double speedMps) {
    return effortN(notch, speedMps) / train.inertiaKg();
  }

  /**
   * What is left of the effort to gain speed with, newtons; below zero where the train slows.
   *
   * @param notch −1 with power off
   * @param trackN what gradient and curves hold back, as {@link TrackForce} gives it
   */
  public double surplusN(int notch, double speedMps, double trackN) {
    return effortN(notch, speedMps) - (train.resistance().atN(speedMps) + trackN);
  }

  /** The same over the inertia of the train: its acceleration, m/s². */
  public double accelerationMps2(int notch, double speedMps, double trackN) {
    return surplusN(notch, speedMps, trackN) / train.inertiaKg();
  }

  /**
   * The balancing speed, m/s: the lowest speed from which the train no longer gains, on an even
   * gradient and straight track. It comes to that speed from a stand. 0 where it does not start
   * (without power: does not roll); infinite where it still gains at 150 m/s.
   *
   * @param notch −1 with power off
   * @param permille rising is positive
   */
  public double balancingMps(int notch, double permille) {
    double trackN = TrackForce.onGradientN(train, permille);
    if (surplusN(notch, 0, trackN) <= 0) {
      return 0;
    }
    double low = 0;
    while (surplusN(notch, low + STEP_MPS, trackN) > 0) {
      low += STEP_MPS;
      if (low > FASTEST_MPS) {
        return Double.POSITIVE_INFINITY;
      }
    }
    double high = low + STEP_MPS;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (surplusN(notch, middle, trackN) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
