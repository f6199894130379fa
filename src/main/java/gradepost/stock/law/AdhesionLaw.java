package gradepost.stock.law;

/** How much of the weight on a wheel can be used along the rail. */
public sealed interface AdhesionLaw permits ConstantAdhesion, CurtiusKniffler, ShareOf {

  /** Coefficient of adhesion against speed. */
  AdhesionCurve curve();

  /** Coefficient of adhesion at this speed. */
  default double mu(double speedMps) {
    return curve().mu(speedMps);
  }

  /** What the coefficient never falls below, at any speed. */
  default double least() {
    return curve().least();
  }
}
