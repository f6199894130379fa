package gradepost.drive.fallback;

/**
 * How great a share of all runs may be, of which so many of those drawn were: the exact upper limit
 * of Clopper and Pearson (<em>The use of confidence or fiducial limits illustrated in the case of
 * the binomial</em>, Biometrika 26, 1934, 404–413), to one side. It is the share p at which no more
 * than this count would be drawn with a chance of one in twenty: the sum over i from 0 to k of C(n,
 * i) pⁱ (1 − p)ⁿ⁻ⁱ is 0.05.
 */
final class BinomialBound {
  private static final double CHANCE = 0.05;

  /** Halvings of the range from 0 to 1: to the last bit of a share of a millionth. */
  private static final int HALVINGS = 70;

  /**
   * The share that is not exceeded with 95 % confidence.
   *
   * @param count of those drawn; at most {@code runs}
   * @param runs how many were drawn; 1 at least
   */
  static double upper(int count, int runs) {
    if (count < 0 || count > runs || runs < 1) {
      throw new IllegalArgumentException(count + " of " + runs);
    }
    if (count == runs) {
      return 1;
    }
    double low = (double) count / runs;
    double high = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (atMost(count, runs, middle) > CHANCE) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** The chance that no more than this count are drawn, by logarithms: a power may be too small. */
  private static double atMost(int count, int runs, double share) {
    if (share <= 0 || share >= 1) {
      return share <= 0 ? 1 : 0;
    }
    double log = runs * Math.log1p(-share);
    double odds = Math.log(share) - Math.log1p(-share);
    double sum = Math.exp(log);
    for (int i = 1; i <= count; i++) {
      log += Math.log((runs - i + 1.0) / i) + odds;
      sum += Math.exp(log);
    }
    return sum;
  }

  private BinomialBound() {}
}
