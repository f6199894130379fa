package gradepost.route;

import gradepost.units.Speed;
import java.util.List;

/** Picks the speed that stands for a train. */
public final class Differentials {
  /** The highest differential speed that names one of the train's classes, else the general one. */
  public static Speed speedFor(
      Speed general, List<Differential> differentials, List<String> classes) {
    return differentials.stream()
        .filter(d -> classes.contains(d.trainClass()))
        .map(Differential::speed)
        .max(Speed::compareTo)
        .orElse(general);
  }

  private Differentials() {}
}
