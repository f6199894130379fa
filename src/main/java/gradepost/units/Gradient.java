package gradepost.units;

/**
 * A gradient in parts per thousand of the distance along the track; rising is positive. The
 * direction in which it rises is that of the value that holds it.
 */
public record Gradient(double permille) implements Comparable<Gradient> {
  public Gradient {
    Finite.require(permille, "permille");
  }

  @Override
  public int compareTo(Gradient other) {
    return Double.compare(permille, other.permille);
  }

  /** One in {@code n} rising; {@code n} is positive. */
  public static Gradient rising(double n) {
    return new Gradient(1000.0 / n);
  }

  /** One in {@code n} falling; {@code n} is positive. */
  public static Gradient falling(double n) {
    return new Gradient(-1000.0 / n);
  }

  /** The same slope met from the other end. */
  public Gradient reversed() {
    return new Gradient(permille == 0 ? 0 : -permille);
  }
}
