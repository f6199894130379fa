package gradepost.stock.law;

/** A share of another law: wet rail is about 0.6 of dry (Koffman 1948). */
public record ShareOf(AdhesionLaw dry, double share) implements AdhesionLaw {
  public ShareOf {
    if (!(share > 0 && share <= 1)) {
      throw new IllegalArgumentException("a share lies above 0 and up to 1: " + share);
    }
  }

  @Override
  public AdhesionCurve curve() {
    return dry.curve().times(share);
  }
}
