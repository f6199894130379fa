package gradepost.drive.brake;

import gradepost.stock.BrakeSystem;
import gradepost.units.Pressure;
import java.util.ArrayList;
import java.util.List;

/** Which pressures can be asked of a brake. */
public final class Pressures {

  /** The lightest one that can be asked for and is not below {@code pascals}; full if none is. */
  public static double atLeast(BrakeSystem system, double pascals) {
    return system
        .control()
        .match(
            any -> Math.min(pascals, system.full().pascals()),
            steps ->
                steps.pressures().stream()
                    .mapToDouble(Pressure::pascals)
                    .filter(p -> p >= pascals - 1)
                    .min()
                    .orElse(system.full().pascals()));
  }

  /**
   * The heaviest one that can be asked for and read from the gauge, and is not above {@code
   * pascals}; the lightest if none is.
   */
  static double atMost(BrakeSystem system, double pascals, double stepPa) {
    return system
        .control()
        .match(
            any -> Math.max(1, Math.floor(pascals / stepPa + 1e-9)) * stepPa,
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
            any -> mains(Math.round(firstPa / stepPa), Math.round(mostPa / stepPa), stepPa),
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
