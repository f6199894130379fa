package gradepost.stock.law;

/**
 * A coefficient of adhesion against speed: {@code share (level + fall / (V + fromKmh))}, V in km/h.
 * It never rises with speed.
 *
 * @param share of the whole, above 0 and up to 1
 * @param level what is left at any speed
 * @param fall km/h, over the sum of both speeds what falls with speed; 0 where nothing does
 * @param fromKmh added to the speed, km/h; above 0
 */
public record AdhesionCurve(double share, double level, double fall, double fromKmh) {
  /** A coefficient that does not fall. */
  static AdhesionCurve level(double level) {
    return new AdhesionCurve(1, level, 0, 1);
  }

  /** The coefficient at this speed; a train that stands has the greatest. */
  public double mu(double speedMps) {
    double kmh = speedMps > 0 ? speedMps * 3.6 : 0;
    return share * (level + fall / (kmh + fromKmh));
  }

  /** What it never falls below. */
  public double least() {
    return share * level;
  }

  /** So much of it. */
  AdhesionCurve times(double part) {
    return new AdhesionCurve(part * share, level, fall, fromKmh);
  }
}
