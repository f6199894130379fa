package gradepost.stock.law;

/**
 * Dry rail by Curtius and Kniffler: {@code 0.161 + 7.5/(V + 44)}, V in km/h (from memory; measured
 * up to about 160 km/h).
 */
public record CurtiusKniffler() implements AdhesionLaw {
  @Override
  public AdhesionCurve curve() {
    return new AdhesionCurve(1, 0.161, 7.5, 44);
  }
}
