package gradepost.units;

/**
 * A lineside mileage as signed, in metres from the zero of its own datum. It may fall in the
 * direction of travel and may jump from one section to the next: only a route turns it into a
 * distance run.
 */
public record Mileage(double metres) implements Comparable<Mileage> {
  public Mileage {
    Finite.require(metres, "metres");
  }

  @Override
  public int compareTo(Mileage other) {
    return Double.compare(metres, other.metres);
  }

  /** Miles and chains as signed; {@code ofMilesChains(3, 24)} is 3m 24ch. */
  public static Mileage ofMilesChains(double miles, double chains) {
    return new Mileage(miles * Exact.MILE_M + chains * Exact.CHAIN_M);
  }

  /** Kilometres as signed. */
  public static Mileage ofKilometres(double kilometres) {
    return new Mileage(kilometres * 1000.0);
  }
}
