package gradepost.stock;

/** A published form of curve resistance. */
public sealed interface CurveLaw permits RocklCurve, DegreeCurve, InverseRadiusCurve, NoCurveDrag {

  /** Resistance in newtons per kilonewton of weight on a curve of this radius. */
  double nPerKn(double radiusM);
}
