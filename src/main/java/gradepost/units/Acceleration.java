package gradepost.units;

/** An acceleration, or where so named a deceleration, in metres a second squared. */
public record Acceleration(double metresPerSecond2) implements Comparable<Acceleration> {
  public Acceleration {
    Finite.require(metresPerSecond2, "metresPerSecond2");
  }

  @Override
  public int compareTo(Acceleration other) {
    return Double.compare(metresPerSecond2, other.metresPerSecond2);
  }
}
