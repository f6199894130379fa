package gradepost.stock;

/** Curves cost nothing. */
public record NoCurveDrag() implements CurveLaw {
  @Override
  public double nPerKn(double radiusM) {
    return 0;
  }
}
