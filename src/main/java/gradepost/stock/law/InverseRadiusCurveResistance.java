package gradepost.stock.law;

/** {@code k/R} in N/kN with R in metres; {@code k} is the user's (500 to 800 in handbooks). */
public record InverseRadiusCurveResistance(double k) implements CurveResistance {
  @Override
  public double nPerKn(double radiusM) {
    return k / radiusM;
  }
}
