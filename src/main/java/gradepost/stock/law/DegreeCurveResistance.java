package gradepost.stock.law;

import gradepost.units.Exact;

/**
 * American practice: so many pounds per short ton for each degree of curve (100 ft chord); 0.8 in
 * the US Army course TR0603. The radius of a curve of D degrees is {@code 50 ft / sin(D/2)}.
 */
public record DegreeCurveResistance(double poundsPerTonPerDegree) implements CurveResistance {
  private static final double HALF_CHORD_M = 50 * 0.3048;

  @Override
  public double nPerKn(double radiusM) {
    double degrees = 2 * Math.toDegrees(Math.asin(Math.min(1, HALF_CHORD_M / radiusM)));
    double poundsPerTon = poundsPerTonPerDegree * degrees;
    return poundsPerTon * Exact.POUND_FORCE_N / (2000 * Exact.POUND_FORCE_N) * 1000.0;
  }
}
