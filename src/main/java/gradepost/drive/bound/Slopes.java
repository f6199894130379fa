package gradepost.drive.bound;

import java.util.Arrays;

/**
 * Slopes that prove much. Any slopes prove something, so that nothing here needs to be exact.
 *
 * <p>First the adjoint equation of the maximum principle, integrated backwards along the {@link
 * CheapestRun}: the slope is 1 under the brake, 0 where a speed is held, between them where the
 * train coasts, below 0 under power. What the run and the equation do not agree on is then evened
 * out: triangular changes of the slope, wide ones first, are kept where they prove more.
 */
final class Slopes {
  /** Holding a speed below the cap, the slope goes back to 0 over so many metres. */
  private static final double EVENS_OUT_M = 500;

  /** Power within this share of none, or of all, is none, or all. */
  private static final double SAME = 0.02;

  private static final double SMALL_N = 1e-6;
  private static final double SAME_ENERGY = 1e-6;

  /** The slope of effort is taken over so much on either side, m/s. */
  private static final double AROUND_MPS = 0.25;

  /** Triangles: half width of the widest and of the narrowest, and the first height tried. */
  private static final double WIDEST_M = 3200;

  private static final double NARROWEST_M = 100;
  private static final double HEIGHT = 0.02;

  private static final double FURTHEST = 3;
  private static final int SWEEPS = 2;

  private final RelaxedLeg leg;
  private final Segments cut;
  private final Certificate certificate;
  private final double wattsPerKg;

  Slopes(RelaxedLeg leg, Segments cut, Certificate certificate, double wattsPerKg) {
    this.leg = leg;
    this.cut = cut;
    this.certificate = certificate;
    this.wattsPerKg = wattsPerKg;
  }

  double[] along(double[] run) {
    double[] slope = new double[cut.count() + 1];
    slope[cut.count()] = 1;
    for (int k = cut.count() - 1; k >= 0; k--) {
      slope[k] = Math.min(1, before(k, slope[k + 1], run[k], run[k + 1]));
    }
    certificate.startFrom(run);
    improve(slope);
    return slope;
  }

  private double before(int k, double slope, double from, double to) {
    double length = cut.lengthM(k);
    double v = Math.sqrt(from + to);
    double effort = leg.effort().from(v);
    double used = (to - from) / length + leg.resistance().atN(v) + cut.meanN[k];
    double adjoint = slope - length * rise(v, slope);
    double little = SAME * effort + SMALL_N;
    if (atMost(k, from) && atMost(k + 1, to)) {
      // At the greatest speed the slope may fall by as much as it likes.
      if (used > effort - little) {
        return Math.max(adjoint, Math.min(0, slope));
      }
      return used > little ? Math.max(adjoint, 0) : used < -little ? 1 : adjoint;
    }
    boolean holds = used > little && used < effort - little;
    return holds ? adjoint * Math.max(0, 1 - length / EVENS_OUT_M) : adjoint;
  }

  private boolean atMost(int k, double energy) {
    return energy >= cut.mostAt[k] * (1 - SAME_ENERGY) - SAME_ENERGY;
  }

  /** What makes the Hamiltonian stationary at this speed. */
  private double rise(double v, double slope) {
    double low = Math.max(0, v - AROUND_MPS);
    double high = v + AROUND_MPS;
    double effort =
        (leg.effort().from(high) - leg.effort().from(low))
            / (Segments.energy(high) - Segments.energy(low));
    double resistance = leg.resistance().bNsPerM() / v + 2 * leg.resistance().cNs2PerM2();
    return wattsPerKg / (v * v * v) - (1 - slope) * resistance - effort * Math.min(0, slope);
  }

  private void improve(double[] slope) {
    double[] other = slope.clone();
    for (int sweep = 1; sweep <= SWEEPS; sweep++) {
      for (double half = WIDEST_M; half >= NARROWEST_M; half /= 2) {
        for (double at = leg.fromM(); at < leg.toM() + half; at += half / 2) {
          improve(slope, other, at, half, HEIGHT / sweep);
        }
      }
    }
  }

  private void improve(double[] slope, double[] other, double at, double half, double height) {
    int from = index(at - half);
    int to = Math.min(cut.count(), index(at + half) + 1);
    double was = certificate.part(wattsPerKg, slope, from, to);
    double up = changed(slope, other, from, to, at, half, height);
    double down = changed(slope, other, from, to, at, half, -height);
    double by = up > down ? height : -height;
    double best = Math.max(up, down);
    double bend = up + down - 2 * was;
    if (bend < 0) {
      double vertex = Math.max(-FURTHEST, Math.min(FURTHEST, (down - up) / (2 * bend)));
      double there = changed(slope, other, from, to, at, half, height * vertex);
      by = there > best ? height * vertex : by;
      best = Math.max(best, there);
    }
    if (best > was) {
      change(slope, other, from, to, at, half, by);
      System.arraycopy(other, from, slope, from, to - from + 1);
    }
  }

  private double changed(
      double[] slope, double[] other, int from, int to, double at, double half, double height) {
    change(slope, other, from, to, at, half, height);
    return certificate.part(wattsPerKg, other, from, to);
  }

  /** Puts a triangle on top; the ends that others share stay as they are. */
  private void change(
      double[] slope, double[] other, int from, int to, double at, double half, double height) {
    for (int k = from; k <= to; k++) {
      boolean shared = (k == from && from > 0) || (k == to && to < cut.count());
      double share = Math.max(0, 1 - Math.abs(cut.placeM[k] - at) / half);
      other[k] = shared ? slope[k] : Math.min(1, slope[k] + height * share);
    }
  }

  /** The last place at or before this one. */
  private int index(double atM) {
    int found = Arrays.binarySearch(cut.placeM, atM);
    return Math.max(0, Math.min(found >= 0 ? found : -found - 2, cut.count() - 1));
  }
}
