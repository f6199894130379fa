package gradepost.units;

/** How fast a pressure rises or falls, in pascals a second; never negative. */
public record PressureRate(double pascalsPerSecond) implements Comparable<PressureRate> {
  public PressureRate {
    Finite.require(pascalsPerSecond, "pascalsPerSecond");
    if (pascalsPerSecond < 0) {
      throw new IllegalArgumentException("a rate is not negative: " + pascalsPerSecond);
    }
  }

  @Override
  public int compareTo(PressureRate other) {
    return Double.compare(pascalsPerSecond, other.pascalsPerSecond);
  }
}
