package gradepost.units;

/** Refuses numbers that are not numbers. */
final class Finite {
  static void require(double value, String name) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " is not a finite number: " + value);
    }
  }

  private Finite() {}
}
