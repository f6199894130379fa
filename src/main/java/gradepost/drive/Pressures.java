package gradepost.drive;

import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.units.Pressure;
import java.util.ArrayList;
import java.util.List;

/** Which pressures can be asked of a brake. */
final class Pressures {

  /** The lightest one that can be asked for and is not below {@code pascals}; full if none is. */
  static double atLeast(BrakeSystem system, double pascals) {
    return switch (system.control()) {
      case BrakeControl.Continuous any -> Math.min(pascals, system.full().pascals());
      case BrakeControl.Steps steps ->
          steps.pressures().stream()
              .mapToDouble(Pressure::pascals)
              .filter(p -> p >= pascals - 1)
              .min()
              .orElse(system.full().pascals());
    };
  }

  /** What the main application can be from heaviest to lightest, down to the first application. */
  static List<Double> mains(BrakeSystem system, double firstPa, double mainPa, double stepPa) {
    List<Double> mains = new ArrayList<>();
    switch (system.control()) {
      case BrakeControl.Continuous any -> {
        double top = Math.min(system.full().pascals(), Math.round(mainPa / stepPa + 3) * stepPa);
        for (double p = top; p >= firstPa - 1; p -= stepPa) {
          mains.add(p);
        }
      }
      case BrakeControl.Steps steps -> {
        List<Pressure> all = steps.pressures();
        for (int i = all.size() - 1; i >= 0; i--) {
          if (all.get(i).pascals() <= mainPa + 1) {
            mains.add(all.get(i).pascals());
          }
        }
      }
    }
    return mains;
  }

  private Pressures() {}
}
