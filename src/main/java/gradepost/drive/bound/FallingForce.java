package gradepost.drive.bound;

import java.util.function.DoubleBinaryOperator;

/**
 * A bound from above on a force that changes with speed: at each speed the greatest that the force
 * has there or at any higher speed, so that it never rises. A step function, in newtons for each
 * kilogram of inertia.
 */
public final class FallingForce {
  private static final double STEP_MPS = 0.05;

  /** More than the rounding of a speed that is looked up, m/s. */
  private static final double OVERLAP_MPS = 1e-9;

  private final double[] greatest;

  /**
   * Of a force.
   *
   * @param fastestMps no higher speed is asked for
   * @param most the greatest force from one speed to a higher one, N/kg; it may be more
   */
  public FallingForce(double fastestMps, DoubleBinaryOperator most) {
    greatest = new double[(int) Math.ceil(fastestMps / STEP_MPS) + 1];
    double above = 0;
    for (int i = greatest.length - 1; i >= 0; i--) {
      double low = Math.max(0, i * STEP_MPS - OVERLAP_MPS);
      above = Math.max(above, most.applyAsDouble(low, (i + 1) * STEP_MPS));
      greatest[i] = above;
    }
  }

  /** The force at this speed and at every higher one is no more than this, N/kg. */
  double from(double mps) {
    return greatest[Math.min((int) (mps / STEP_MPS), greatest.length - 1)];
  }
}
