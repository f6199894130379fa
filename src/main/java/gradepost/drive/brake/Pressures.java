package gradepost.drive.brake;

import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.units.Pressure;
import java.util.ArrayList;
import java.util.List;

/** Which pressures can be asked of a brake. */
public final class Pressures {

  /** The lightest one that can be asked for and is not below {@code pascals}; full if none is. */
  public static double atLeast(BrakeSystem system, double pascals) {
    if (system.control() instanceof BrakeControl.Steps steps) {
      return steps.pressures().stream()
          .mapToDouble(Pressure::pascals)
          .filter(p -> p >= pascals - 1)
          .min()
          .orElse(system.full().pascals());
    }
    return Math.min(pascals, system.full().pascals());
  }

  /**
   * The heaviest one that can be asked for and read from the gauge, and is not above {@code
   * pascals}; the lightest if none is.
   */
  static double atMost(BrakeSystem system, double pascals, double stepPa) {
    if (system.control() instanceof BrakeControl.Steps steps) {
      return steps.pressures().stream()
          .mapToDouble(Pressure::pascals)
          .filter(p -> p <= pascals + 1)
          .max()
          .orElse(steps.pressures().get(0).pascals());
    }
    return Math.max(1, Math.floor(pascals / stepPa + 1e-9)) * stepPa;
  }

  /** What the main application can be, from the heaviest down to the first application. */
  static List<Double> mains(BrakeSystem system, double firstPa, double mainPa, double stepPa) {
    List<Double> mains = new ArrayList<>();
    if (system.control() instanceof BrakeControl.Steps steps) {
      List<Pressure> all = steps.pressures();
      for (int i = all.size() - 1; i >= 0; i--) {
        double p = all.get(i).pascals();
        if (p <= mainPa + 1 && p >= firstPa - 1) {
          mains.add(p);
        }
      }
      return mains;
    }
    long top = Math.round(Math.min(system.full().pascals(), mainPa) / stepPa);
    long low = Math.round(firstPa / stepPa);
    for (long p = top; p >= low; p--) {
      mains.add(p * stepPa);
    }
    return mains;
  }

  private Pressures() {}
}
