package gradepost.units;

/**
 * How far the front of the train has come along a path, in metres from the start of the path;
 * negative ahead of the start.
 */
public record DistanceRun(double metres) implements Comparable<DistanceRun> {
  public DistanceRun {
    Finite.require(metres, "metres");
  }

  @Override
  public int compareTo(DistanceRun other) {
    return Double.compare(metres, other.metres);
  }
}
