package gradepost.stock.law;

/** A published form of curve resistance. */
public sealed interface CurveResistance
    permits RocklCurveResistance,
        DegreeCurveResistance,
        InverseRadiusCurveResistance,
        NoCurveResistance {

  /** Resistance in newtons per kilonewton of weight on a curve of this radius. */
  double nPerKn(double radiusM);
}
