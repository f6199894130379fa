package gradepost.drive.bound;

/**
 * What a leg takes at least in a given time, proved: see the note of this package.
 *
 * @param joulesPerKg no run that is in time does less work at the wheel rim, joules for each
 *     kilogram of inertia
 * @param wattsPerKg what a second is worth there: the price of time at which it was proved
 */
public record EnergyBound(double joulesPerKg, double wattsPerKg) {
  /** Prices of a second, watts for each kilogram. */
  private static final double LEAST_PRICE = 0.001;

  private static final double GREATEST_PRICE = 200;

  /** The price is found to this ratio on the coarse grid; it may be out by the next; then finer. */
  private static final double COARSE_RATIO = 1.08;

  private static final double OUT = 1.25;
  private static final double FINE_RATIO = 1.02;

  /** Grids: to come near the price; to find it, and to prove. */
  private static final double COARSE_M = 100;

  private static final double COARSE_MPS = 0.5;
  private static final double FINE_M = 50;
  private static final double FINE_MPS = 0.25;

  /** Of the sum of all numbers, for their rounding; far more than that can be. */
  private static final double ROUNDING = 1e-9;

  /** For a running time; 0 where nothing can be proved. */
  public static EnergyBound of(RelaxedLeg leg, double seconds) {
    CheapestRun coarse = new CheapestRun(leg, new Segments(leg, COARSE_M), COARSE_MPS);
    double near = price(coarse, seconds, LEAST_PRICE, GREATEST_PRICE, COARSE_RATIO);
    Segments cut = new Segments(leg, FINE_M);
    CheapestRun cheapest = new CheapestRun(leg, cut, FINE_MPS);
    double price = price(cheapest, seconds, near / OUT, near, FINE_RATIO);
    cheapest.solve(price);
    Certificate certificate = new Certificate(leg, cut, FINE_MPS);
    double[] slope = new Slopes(leg, cut, certificate, price).along(cheapest.run);
    double least = certificate.least(price, slope);
    double rounding = ROUNDING * (Math.abs(least) + price * seconds + cut.most());
    return new EnergyBound(Math.max(0, least - price * seconds - rounding), price);
  }

  /** The lowest of these prices of a second at which the run that costs least is in time. */
  private static double price(
      CheapestRun cheapest, double seconds, double least, double greatest, double ratio) {
    double low = least;
    double high = greatest;
    while (high > low * ratio) {
      double middle = Math.sqrt(low * high);
      cheapest.solve(middle);
      if (cheapest.seconds() > seconds) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
