package gradepost.drive.brake;

import java.util.function.DoubleUnaryOperator;

/**
 * Finds where a falling function passes zero: the false position as Anderson and Björck improve it
 * (BIT 13, 1973), with halving where it crawls. A jump counts as a crossing.
 */
public final class Root {
  /** So often a place further back is looked for by the slope alone. */
  private static final int STEPS_BACK = 6;

  /** What begins a metre later ends so many metres later. */
  private static final double LEAST_PER_M = 0.3;

  private static final double MOST_PER_M = 3;

  /**
   * The same for metres short of an aim, where what begins a metre later ends about a metre later:
   * looked for from {@code high} back. {@code high} itself where it is not negative there; NaN
   * where it is negative at {@code low} too.
   */
  public static double lastShort(DoubleUnaryOperator f, double low, double high, double tolerance) {
    double atHigh = f.applyAsDouble(high);
    return atHigh >= 0 ? high : lastShort(f, low, high, atHigh, tolerance);
  }

  /** The same where the value at {@code high} is known, and is negative. */
  public static double lastShort(
      DoubleUnaryOperator f, double low, double high, double atHigh, double tolerance) {
    double b = high;
    double fb = atHigh;
    double perM = 1;
    for (int i = 0; i < STEPS_BACK; i++) {
      double x = b + fb / perM - tolerance / 8;
      if (x <= low) {
        break;
      }
      double fx = f.applyAsDouble(x);
      if (fx >= 0) {
        return lastNotNegative(f, x, b, fx, fb, tolerance);
      }
      perM = Math.min(Math.max((fx - fb) / (b - x), LEAST_PER_M), MOST_PER_M);
      b = x;
      fb = fx;
    }
    double atLow = f.applyAsDouble(low);
    return atLow < 0 ? Double.NaN : lastNotNegative(f, low, b, atLow, fb, tolerance);
  }

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
