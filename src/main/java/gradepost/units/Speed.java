package gradepost.units;

/** A speed along the track, in metres a second; never negative. */
public record Speed(double metresPerSecond) implements Comparable<Speed> {
  public Speed {
    Finite.require(metresPerSecond, "metresPerSecond");
    if (metresPerSecond < 0) {
      throw new IllegalArgumentException("a speed is not negative: " + metresPerSecond);
    }
  }

  @Override
  public int compareTo(Speed other) {
    return Double.compare(metresPerSecond, other.metresPerSecond);
  }

  /** From miles an hour. */
  public static Speed ofMph(double mph) {
    return new Speed(mph * Exact.MPH_MPS);
  }

  /** From kilometres an hour. */
  public static Speed ofKmh(double kmh) {
    return new Speed(kmh / 3.6);
  }

  /** In miles an hour. */
  public double mph() {
    return metresPerSecond / Exact.MPH_MPS;
  }

  /** In kilometres an hour. */
  public double kmh() {
    return metresPerSecond * 3.6;
  }
}
