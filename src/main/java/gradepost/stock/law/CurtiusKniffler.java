package gradepost.stock.law;

/**
 * Dry rail by Curtius and Kniffler: {@code 0.161 + 7.5/(V + 44)}, V in km/h (from memory; measured
 * up to about 160 km/h).
 */
public record CurtiusKniffler() implements AdhesionLaw {
  /** Coefficient that is never undercut. */
  public static final double LEVEL = 0.161;

  /** Of the part that falls with speed, km/h. */
  public static final double FALL = 7.5;

  /** Added to the speed in it, km/h. */
  public static final double FROM_KMH = 44;

  @Override
  public double least() {
    return LEVEL;
  }

  @Override
  public double mu(double speedMps) {
    return LEVEL + FALL / (Math.max(0, speedMps) * 3.6 + FROM_KMH);
  }
}
