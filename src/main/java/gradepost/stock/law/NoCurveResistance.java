package gradepost.stock.law;

/** Curves cost nothing. */
public record NoCurveResistance() implements CurveResistance {
  @Override
  public double nPerKn(double radiusM) {
    return 0;
  }
}
