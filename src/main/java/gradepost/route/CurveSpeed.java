package gradepost.route;

import gradepost.units.Length;
import gradepost.units.Speed;

/**
 * Cant and speed on curves, for checks of route data; permissible speeds come from the route's own
 * papers.
 */
public final class CurveSpeed {
  /**
   * {@code S/(3.6²·g)} in mm·m/(km/h)² for rail heads 1502 mm apart: standard gauge. (From memory;
   * the constant re-derived.)
   */
  private static final double EQUILIBRIUM = 11.82;

  /** British form of the same constant, {@code 1/√11.82} rounded down (from memory). */
  private static final double PERMISSIBLE = 0.29;

  /** The cant at which nothing pulls sideways: {@code 11.82·V²/R} mm, V in km/h, R in m. */
  public static Length equilibriumCant(Speed speed, Length radius) {
    return new Length(EQUILIBRIUM * speed.kmh() * speed.kmh() / radius.metres() / 1000);
  }

  /**
   * {@code 0.29·√(R·(E + D))} km/h, R in m, cant E and cant deficiency D in mm.
   *
   * @param deficiency how far below its equilibrium the cant may be
   */
  public static Speed permissible(Length radius, Length cant, Length deficiency) {
    double millimetres = (cant.metres() + deficiency.metres()) * 1000;
    return Speed.ofKmh(PERMISSIBLE * Math.sqrt(radius.metres() * millimetres));
  }

  private CurveSpeed() {}
}
