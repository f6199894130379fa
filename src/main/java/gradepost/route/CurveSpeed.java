package gradepost.route;

import gradepost.units.Exact;
import gradepost.units.Length;
import gradepost.units.Speed;

/**
 * Cant and speed on curves, for checks of route data; permissible speeds come from the route's own
 * papers. The length between the middles of the rail heads is data: published practice differs for
 * one and the same gauge, so that it does not follow from the gauge.
 */
public final class CurveSpeed {
  /**
   * Of standard gauge, the length behind the constant 11.82 of {@code 11.82·V²/R} (from memory).
   */
  public static final Length STANDARD_RAIL_CENTRES = new Length(1.502);

  /** British form {@code 0.29·√(R·(E + D))}, {@code 1/√11.82} rounded down (from memory). */
  private static final double PERMISSIBLE = 0.29;

  /** The cant at which nothing pulls sideways: {@code s·v²/(g·R)}. */
  public static Length equilibriumCant(Speed speed, Length radius, Length railCentres) {
    double v = speed.metresPerSecond();
    return new Length(railCentres.metres() * v * v / (Exact.G * radius.metres()));
  }

  /**
   * {@code 0.29·√(R·(E + D))} km/h, R in m, cant E and cant deficiency D in mm, for standard gauge;
   * for others by the root of the length between rail centres.
   *
   * @param deficiency how far below its equilibrium the cant may be
   */
  public static Speed permissible(
      Length radius, Length cant, Length deficiency, Length railCentres) {
    double millimetres = (cant.metres() + deficiency.metres()) * 1000;
    double centres = STANDARD_RAIL_CENTRES.metres() / railCentres.metres();
    return Speed.ofKmh(PERMISSIBLE * Math.sqrt(radius.metres() * millimetres * centres));
  }

  private CurveSpeed() {}
}
