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

  /** The price is found to this ratio. */
  private static final double NEAR = 1.01;

  /** Grids: to find the price, and to prove. */
  private static final double COARSE_M = 50;

  private static final double COARSE_MPS = 0.5;
  private static final double FINE_M = 25;
  private static final double FINE_MPS = 0.25;

  /** Of the sum of all numbers, for their rounding; far more than that can be. */
  private static final double ROUNDING = 1e-9;

  /** For a running time; 0 where nothing can be proved. */
  public static EnergyBound of(RelaxedLeg leg, double seconds) {
    double price = price(leg, seconds);
    Segments cut = new Segments(leg, FINE_M);
    CheapestRun cheapest = new CheapestRun(leg, cut, FINE_MPS);
    cheapest.solve(price);
    Certificate certificate = new Certificate(leg, cut, FINE_MPS);
    double[] slope = new Slopes(leg, cut, certificate, price).along(cheapest.run);
    double least = certificate.least(price, slope);
    double rounding = ROUNDING * (Math.abs(least) + price * seconds + cut.most());
    return new EnergyBound(Math.max(0, least - price * seconds - rounding), price);
  }

  /** The lowest price of a second at which the run that costs least is in time. */
  private static double price(RelaxedLeg leg, double seconds) {
    Segments cut = new Segments(leg, COARSE_M);
    CheapestRun cheapest = new CheapestRun(leg, cut, COARSE_MPS);
    double low = LEAST_PRICE;
    double high = GREATEST_PRICE;
    while (high > low * NEAR) {
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
