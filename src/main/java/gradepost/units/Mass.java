package gradepost.units;

/** A mass in kilograms; never negative. */
public record Mass(double kilograms) implements Comparable<Mass> {
  public Mass {
    Finite.require(kilograms, "kilograms");
    if (kilograms < 0) {
      throw new IllegalArgumentException("a mass is not negative: " + kilograms);
    }
  }

  @Override
  public int compareTo(Mass other) {
    return Double.compare(kilograms, other.kilograms);
  }

  /** From tonnes of 1,000 kg. */
  public static Mass ofTonnes(double tonnes) {
    return new Mass(tonnes * 1000.0);
  }
}
