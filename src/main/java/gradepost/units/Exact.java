package gradepost.units;

/** Conversion factors that are exact by definition (international yard and pound, 1959). */
public final class Exact {
  public static final double YARD_M = 0.9144;
  public static final double CHAIN_M = 22 * YARD_M;
  public static final double MILE_M = 1760 * YARD_M;
  public static final double MPH_MPS = MILE_M / 3600.0;
  public static final double POUND_KG = 0.45359237;

  /** Standard acceleration of free fall, m/s² (CGPM 1901). */
  public static final double G = 9.80665;

  public static final double POUND_FORCE_N = POUND_KG * G;
  public static final double PSI_PA = POUND_FORCE_N / (0.0254 * 0.0254);

  /** Technical atmosphere, Pa: a kilogram of force on a square centimetre. */
  public static final double KG_CM2_PA = G * 1e4;

  /** Standard atmosphere, Pa: what a gauge pressure is counted from. */
  public static final double ATMOSPHERE_PA = 101_325.0;

  private Exact() {}
}
