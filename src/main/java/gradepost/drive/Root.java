package gradepost.drive;

import java.util.function.DoubleUnaryOperator;

/**
 * Finds where a falling function passes zero: the Illinois variant of the false position, with
 * halving where it crawls. A jump counts as a crossing.
 */
final class Root {

  /**
   * The greatest {@code x} found with {@code f(x) >= 0}, within {@code tolerance} of the crossing.
   *
   * @param low where {@code f} is not negative
   * @param high where {@code f} is negative
   */
  static double lastNotNegative(
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
    int kept = 0;
    for (int i = 0; i < 100 && b - a > tolerance; i++) {
      double width = b - a;
      double x = fa == fb || i % 5 == 4 ? a + width / 2 : a + fa * width / (fa - fb);
      x = Math.min(Math.max(x, a + 0.25 * tolerance), b - 0.25 * tolerance);
      double fx = f.applyAsDouble(x);
      if (fx >= 0) {
        a = x;
        fa = fx;
        fb = kept > 0 ? fb / 2 : fb;
        kept = 1;
        if (fx < tolerance / 4) {
          return a;
        }
      } else {
        b = x;
        fb = fx;
        fa = kept < 0 ? fa / 2 : fa;
        kept = -1;
      }
    }
    return a;
  }

  private Root() {}
}
