package gradepost.drive.brake;

import java.util.function.DoubleUnaryOperator;

/**
 * Finds where a falling function passes zero: the false position as Anderson and Björck improve it
 * (BIT 13, 1973), with halving where it crawls. A jump counts as a crossing.
 */
public final class Root {
  /**
   * The greatest {@code x} found with {@code f(x) >= 0}, within {@code tolerance} of the crossing.
   *
   * @param low where {@code f} is not negative
   * @param high where {@code f} is negative
   */
  public static double lastNotNegative(
      DoubleUnaryOperator f,
      double low,
      double high,
      double atLow,
      double atHigh,
      double tolerance) {
    double a = low;
    double b = high;
    double fa = atLow;
    double fb = atHigh;
    boolean near = fa < tolerance / 4;
    boolean wasOver = true;
    for (int i = 0; i < 100 && b - a > tolerance && !near; i++) {
      double width = b - a;
      double x = fa == fb || i % 5 == 4 ? a + width / 2 : a + fa * width / (fa - fb);
      // Aimed a hair short, so that what hits ends it.
      x = Math.min(Math.max(x - tolerance / 8, a + 0.25 * tolerance), b - 0.25 * tolerance);
      double fx = f.applyAsDouble(x);
      boolean over = fx < 0;
      boolean again = i > 0 && over == wasOver;
      if (over) {
        fa = again ? fa * lessened(fx, fb) : fa;
        b = x;
        fb = fx;
      } else {
        fb = again ? fb * lessened(fx, fa) : fb;
        a = x;
        fa = fx;
        near = fx < tolerance / 4;
      }
      wasOver = over;
    }
    return a;
  }

  /** The value at the end that stays, where the other end moved twice: N. Anderson, Å. Björck. */
  private static double lessened(double now, double before) {
    double share = 1 - now / before;
    return share > 0 ? share : 0.5;
  }

  private Root() {}
}
