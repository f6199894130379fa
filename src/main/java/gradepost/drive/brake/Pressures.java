package gradepost.drive.brake;

import gradepost.stock.BrakeSystem;
import gradepost.units.Pressure;
import java.util.ArrayList;
import java.util.List;

/** Which pressures can be asked of a brake. */
public final class Pressures {

  /** Nearer than this to a step of the gauge, a pressure is on it. */
  private static final double ON_STEP_PA = 1e-3;

  /**
   * The one that is asked for where {@code pascals} is stated: of a brake with steps the lightest
   * that is not below it, full if none is; of any other the nearest that the gauge can show.
   */
  public static double asked(BrakeSystem system, double pascals, double stepPa) {
    return system
        .control()
        .match(
            any -> onGauge(Math.min(pascals, system.full().pascals()), stepPa),
            steps ->
                steps.pressures().stream()
                    .mapToDouble(Pressure::pascals)
                    .filter(p -> p >= pascals - 1)
                    .min()
                    .orElse(system.full().pascals()));
  }

  private static double onGauge(double pascals, double stepPa) {
    double shown = Math.max(1, Math.round(pascals / stepPa)) * stepPa;
    return Math.abs(shown - pascals) < ON_STEP_PA ? pascals : shown;
  }

  /**
   * The heaviest one that can be asked for and read from the gauge, and is not above {@code
   * pascals}; the lightest if none is.
   */
  static double atMost(BrakeSystem system, double pascals, double stepPa) {
    return system
        .control()
        .match(
            any -> Math.max(1, Math.floor(pascals / stepPa + Slack.ROUNDING)) * stepPa,
            steps ->
                steps.pressures().stream()
                    .mapToDouble(Pressure::pascals)
                    .filter(p -> p <= pascals + 1)
                    .max()
                    .orElse(steps.pressures().get(0).pascals()));
  }

  /** What the main application can be, from the heaviest down to the first application. */
  static List<Double> mains(BrakeSystem system, double firstPa, double mainPa, double stepPa) {
    double mostPa = Math.min(system.full().pascals(), mainPa);
    return system
        .control()
        .match(
            any ->
                mains(
                    Math.round(firstPa / stepPa),
                    (long) Math.floor(mostPa / stepPa + Slack.ROUNDING),
                    stepPa),
            steps -> mains(steps.pressures(), firstPa, mainPa));
  }

  private static List<Double> mains(List<Pressure> steps, double firstPa, double mainPa) {
    List<Double> mains = new ArrayList<>();
    for (int i = steps.size() - 1; i >= 0; i--) {
      double p = steps.get(i).pascals();
      if (p <= mainPa + 1 && p >= firstPa - 1) {
        mains.add(p);
      }
    }
    return mains;
  }

  private static List<Double> mains(long low, long top, double stepPa) {
    List<Double> mains = new ArrayList<>();
    for (long p = top; p >= low; p--) {
      mains.add(p * stepPa);
    }
    return mains;
  }

  private Pressures() {}
}
