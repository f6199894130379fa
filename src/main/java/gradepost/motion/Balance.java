package gradepost.motion;

import gradepost.stock.law.AdhesionLaw;
import gradepost.units.Exact;

/** The balancing speed: at it a train in one notch neither gains nor loses speed. */
public final class Balance {
  private static final double FASTEST_MPS = 150;
  private static final double STEP_MPS = 0.1;
  private static final int HALVINGS = 40;

  /**
   * The lowest speed from which the train no longer gains, on an even gradient and straight track:
   * that which it comes to from a stand. 0 where it does not start (without power: does not roll);
   * infinite where it still gains at 150 m/s.
   *
   * @param notch −1 with power off
   * @param permille rising is positive
   * @param adhesion that no notch pulls more than
   */
  public static double speedMps(Train train, int notch, double permille, AdhesionLaw adhesion) {
    if (surplusN(train, notch, permille, adhesion, 0) <= 0) {
      return 0;
    }
    double low = 0;
    while (surplusN(train, notch, permille, adhesion, low + STEP_MPS) > 0) {
      low += STEP_MPS;
      if (low > FASTEST_MPS) {
        return Double.POSITIVE_INFINITY;
      }
    }
    double high = low + STEP_MPS;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (surplusN(train, notch, permille, adhesion, middle) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static double surplusN(
      Train train, int notch, double permille, AdhesionLaw adhesion, double mps) {
    double effort = notch < 0 ? 0 : train.effort().get(notch).at(mps);
    double grip = adhesion.mu(mps) * train.motoredKg() * Exact.G;
    double hold = train.resistance().atN(mps) + train.weightN() * permille / 1000;
    return Math.min(effort, grip) - hold;
  }

  private Balance() {}
}
