package gradepost.stock.law;

/**
 * Röckl: {@code 650/(R−55)} for R of 300 m and more, {@code 500/(R−30)} below, in N/kN. Jumps at
 * 300 m by design of its author. Below 60 m the second form is an extrapolation and is refused.
 */
public record RocklCurveResistance() implements CurveResistance {
  @Override
  public double nPerKn(double radiusM) {
    if (radiusM < 60) {
      throw new IllegalArgumentException("radius below 60 m is outside Röckl's range: " + radiusM);
    }
    return radiusM >= 300 ? 650 / (radiusM - 55) : 500 / (radiusM - 30);
  }
}
