package gradepost.units;

/** A stretch of time in seconds; never negative. */
public record Span(double seconds) implements Comparable<Span> {
  public Span {
    Finite.require(seconds, "seconds");
    if (seconds < 0) {
      throw new IllegalArgumentException("a time is not negative: " + seconds);
    }
  }

  @Override
  public int compareTo(Span other) {
    return Double.compare(seconds, other.seconds);
  }
}
