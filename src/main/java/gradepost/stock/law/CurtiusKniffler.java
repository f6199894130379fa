package gradepost.stock.law;

/**
 * Dry rail by Curtius and Kniffler: {@code 0.161 + 7.5/(V + 44)}, V in km/h (from memory; measured
 * up to about 160 km/h).
 */
public record CurtiusKniffler() implements AdhesionLaw {
  @Override
  public double least() {
    return 0.161;
  }

  @Override
  public double mu(double speedMps) {
    return 0.161 + 7.5 / (Math.max(0, speedMps) * 3.6 + 44);
  }
}
