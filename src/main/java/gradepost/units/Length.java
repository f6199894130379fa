package gradepost.units;

/** A length along or across the track, in metres; never negative. */
public record Length(double metres) implements Comparable<Length> {
  public Length {
    Finite.require(metres, "metres");
    if (metres < 0) {
      throw new IllegalArgumentException("a length is not negative: " + metres);
    }
  }

  @Override
  public int compareTo(Length other) {
    return Double.compare(metres, other.metres);
  }

  /** A length given in chains of 22 yards (20.1168 m exactly). */
  public static Length ofChains(double chains) {
    return new Length(chains * Exact.CHAIN_M);
  }
}
