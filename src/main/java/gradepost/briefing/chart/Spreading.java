package gradepost.briefing.chart;

import java.util.Arrays;

/**
 * Moves things along an axis apart so that none overlaps the next: in their order, between two
 * ends, and by the least squares of their moves (the pool of adjacent violators; Ayer and others,
 * Annals of Mathematical Statistics 26, 1955).
 */
public final class Spreading {

  /**
   * Where each begins.
   *
   * @param wanted where each would begin, ascending
   * @param sizes how much each takes
   * @throws IllegalArgumentException if all together take more than there is
   */
  public static double[] of(double[] wanted, double[] sizes, double from, double to) {
    int n = wanted.length;
    double total = Arrays.stream(sizes).sum();
    if (total > to - from + 1e-6) {
      throw new IllegalArgumentException(
          "%d things of %.1f together have no room in %.1f".formatted(n, total, to - from));
    }
    double[] sum = new double[n];
    int[] count = new int[n];
    int pools = 0;
    double before = 0;
    for (int i = 0; i < n; i++) {
      sum[pools] = wanted[i] - before;
      count[pools++] = 1;
      while (pools > 1 && sum[pools - 2] / count[pools - 2] >= sum[pools - 1] / count[pools - 1]) {
        sum[pools - 2] += sum[pools - 1];
        count[pools - 2] += count[pools - 1];
        pools--;
      }
      before += sizes[i];
    }
    double[] out = new double[n];
    double taken = 0;
    int i = 0;
    for (int pool = 0; pool < pools; pool++) {
      double start = Math.max(from, Math.min(to - total, sum[pool] / count[pool]));
      for (int k = 0; k < count[pool]; k++, i++) {
        out[i] = start + taken;
        taken += sizes[i];
      }
    }
    return out;
  }

  private Spreading() {}
}
