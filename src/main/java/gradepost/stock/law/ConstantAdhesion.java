package gradepost.stock.law;

/** The same at every speed. */
public record ConstantAdhesion(double coefficient) implements AdhesionLaw {
  public ConstantAdhesion {
    if (!(coefficient > 0 && coefficient <= 1)) {
      throw new IllegalArgumentException("adhesion lies above 0 and up to 1: " + coefficient);
    }
  }

  @Override
  public AdhesionCurve curve() {
    return AdhesionCurve.level(coefficient);
  }
}
