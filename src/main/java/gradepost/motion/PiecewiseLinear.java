package gradepost.motion;

import java.util.Arrays;

/**
 * A continuous function given by knots, linear between them; its first and last slopes go on beyond
 * the ends. At least two knots, strictly rising.
 */
public final class PiecewiseLinear {
  private final double[] x;
  private final double[] y;

  public PiecewiseLinear(double[] x, double[] y) {
    if (x.length < 2 || x.length != y.length) {
      throw new IllegalArgumentException("a line has two knots at least");
    }
    for (int i = 1; i < x.length; i++) {
      if (!(x[i] > x[i - 1])) {
        throw new IllegalArgumentException("knots rise: " + x[i - 1] + ", " + x[i]);
      }
    }
    this.x = x.clone();
    this.y = y.clone();
  }

  /** How many knots there are. */
  public int knots() {
    return x.length;
  }

  /** Where a knot lies. */
  public double x(int i) {
    return x[i];
  }

  /** The value at a knot. */
  public double y(int i) {
    return y[i];
  }

  /** The piece that holds {@code at}: 0 to knots − 2; on a knot the piece that begins there. */
  public int piece(double at) {
    int found = Arrays.binarySearch(x, at);
    int piece = found >= 0 ? found : -found - 2;
    return Math.min(Math.max(piece, 0), x.length - 2);
  }

  /** Slope between a knot and the next. */
  public double slope(int piece) {
    return (y[piece + 1] - y[piece]) / (x[piece + 1] - x[piece]);
  }

  /**
   * The same with fewer knots: one is left out where the line through its neighbours passes it by
   * less than {@code within}.
   */
  PiecewiseLinear withoutStraightKnots(double within) {
    double[] keptX = new double[x.length];
    double[] keptY = new double[x.length];
    keptX[0] = x[0];
    keptY[0] = y[0];
    int n = 1;
    for (int i = 1; i < x.length; i++) {
      if (i + 1 < x.length) {
        double share = (x[i] - keptX[n - 1]) / (x[i + 1] - keptX[n - 1]);
        double straight = keptY[n - 1] + share * (y[i + 1] - keptY[n - 1]);
        if (Math.abs(straight - y[i]) < within) {
          continue;
        }
      }
      keptX[n] = x[i];
      keptY[n] = y[i];
      n++;
    }
    return new PiecewiseLinear(Arrays.copyOf(keptX, n), Arrays.copyOf(keptY, n));
  }

  /** The same within its ends, and level beyond them. */
  public PiecewiseLinear flattened() {
    int n = x.length;
    double[] fx = new double[n + 2];
    double[] fy = new double[n + 2];
    System.arraycopy(x, 0, fx, 1, n);
    System.arraycopy(y, 0, fy, 1, n);
    fx[0] = x[0] - 1;
    fy[0] = y[0];
    fx[n + 1] = x[n - 1] + 1;
    fy[n + 1] = y[n - 1];
    return new PiecewiseLinear(fx, fy);
  }

  /** The value anywhere, also beyond the ends. */
  public double at(double at) {
    int i = piece(at);
    return y[i] + slope(i) * (at - x[i]);
  }
}
