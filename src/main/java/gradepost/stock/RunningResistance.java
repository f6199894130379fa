package gradepost.stock;

/**
 * Resistance of a whole train on level straight track: {@code aN + bNsPerM·v + cNs2PerM2·v²}, in
 * newtons with {@code v} in metres a second.
 */
public record RunningResistance(double aN, double bNsPerM, double cNs2PerM2) {
  /** Resistance at a speed, newtons. */
  public double atN(double speedMps) {
    return aN + speedMps * (bNsPerM + speedMps * cNs2PerM2);
  }
}
