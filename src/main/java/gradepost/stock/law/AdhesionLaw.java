package gradepost.stock.law;

/** How much of the weight on a wheel can be used along the rail. */
public sealed interface AdhesionLaw permits ConstantAdhesion, CurtiusKniffler, ShareOf {

  /** Coefficient of adhesion at this speed. */
  double mu(double speedMps);

  /** What the coefficient never falls below, at any speed. */
  double least();
}
