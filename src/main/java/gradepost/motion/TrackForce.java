package gradepost.motion;

import gradepost.stock.law.CurveResistance;
import gradepost.units.Exact;
import java.util.Arrays;

/**
 * What gradient and curves do to one long train, against distance run of its front: newtons that
 * hold it back. Since elevation is linear between its breakpoints and a vehicle's share is a
 * difference quotient over its length, the whole is continuous and linear between breakpoints
 * shifted by the vehicles' ends, and is kept so: exact, and one look-up in the inner loop.
 */
public final class TrackForce {
  /** A thousandth of what the least wind does. */
  private static final double STRAIGHT_N = 1e-4;

  /** Gradient, curve resistance and check-rail drag. */
  public static PiecewiseLinear of(
      Track track, Train train, CurveResistance law, double checkRailDragNPerKn) {
    return of(track.feltElevation(law, checkRailDragNPerKn), train);
  }

  /** Gradient alone: for points that may not count on the curves' help. */
  public static PiecewiseLinear gradientOnly(Track track, Train train) {
    return of(track.elevation(), train);
  }

  /** What an even gradient holds a train back by, newtons; rising is positive. */
  public static double onGradientN(Train train, double permille) {
    return train.weightN() * permille / 1000;
  }

  private static PiecewiseLinear of(PiecewiseLinear height, Train train) {
    int n = train.vehicles();
    double[] end = new double[n + 1];
    for (int i = 0; i < n; i++) {
      end[i + 1] = end[i] + train.lengthM()[i];
    }
    double[] all = new double[height.knots() * (n + 1)];
    int k = 0;
    for (int j = 0; j < height.knots(); j++) {
      for (double e : end) {
        all[k++] = height.x(j) + e;
      }
    }
    Arrays.sort(all);
    double[] at = new double[k + 1];
    int m = 0;
    for (double a : all) {
      if (m == 0 || a - at[m - 1] > 1e-6) {
        at[m++] = a;
      }
    }
    if (m == 1) {
      at[m++] = at[0] + 1;
    }
    double[] force = new double[m];
    for (int j = 0; j < m; j++) {
      double sum = 0;
      for (int i = 0; i < n; i++) {
        double rise = height.at(at[j] - end[i]) - height.at(at[j] - end[i + 1]);
        sum += train.massKg()[i] * rise / train.lengthM()[i];
      }
      force[j] = Exact.G * sum;
    }
    return new PiecewiseLinear(Arrays.copyOf(at, m), force)
        .flattened()
        .withoutStraightKnots(STRAIGHT_N);
  }

  private TrackForce() {}
}
