package gradepost.units;

/** A gauge pressure (above atmosphere), in pascals; never negative. */
public record Pressure(double pascals) implements Comparable<Pressure> {
  public Pressure {
    Finite.require(pascals, "pascals");
    if (pascals < 0) {
      throw new IllegalArgumentException("a gauge pressure is not negative: " + pascals);
    }
  }

  @Override
  public int compareTo(Pressure other) {
    return Double.compare(pascals, other.pascals);
  }

  /** From pounds per square inch. */
  public static Pressure ofPsi(double psi) {
    return new Pressure(psi * Exact.PSI_PA);
  }

  /** From bar. */
  public static Pressure ofBar(double bar) {
    return new Pressure(bar * 1e5);
  }

  /** In pounds per square inch. */
  public double psi() {
    return pascals / Exact.PSI_PA;
  }

  /** In bar. */
  public double bar() {
    return pascals / 1e5;
  }
}
