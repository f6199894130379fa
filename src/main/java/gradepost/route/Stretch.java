package gradepost.route;

/**
 * A stretch of a path in distance run, metres: from where a train meets it to where it ends.
 *
 * @param fromM the nearer end
 * @param toM the farther end; not before {@code fromM}
 */
public record Stretch(double fromM, double toM) {
  public Stretch {
    if (!(fromM <= toM)) {
      throw new IllegalArgumentException("a stretch ends before it begins: " + fromM + ", " + toM);
    }
  }

  /** How long it is, metres. */
  public double lengthM() {
    return toM - fromM;
  }

  /** Whether both have some length in common. */
  public boolean overlaps(Stretch other) {
    return fromM < other.toM && other.fromM < toM;
  }

  /** How far a place is before it or behind it, metres; 0 where the place is on it. */
  public double offM(double atM) {
    return Math.max(0, Math.max(fromM - atM, atM - toM));
  }
}
