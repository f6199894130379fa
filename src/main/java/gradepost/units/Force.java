package gradepost.units;

/** A force in newtons along the track. */
public record Force(double newtons) implements Comparable<Force> {
  public Force {
    Finite.require(newtons, "newtons");
  }

  @Override
  public int compareTo(Force other) {
    return Double.compare(newtons, other.newtons);
  }
}
