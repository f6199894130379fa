package gradepost.drive.grid;

import gradepost.drive.brake.TrainModels;
import java.util.ArrayList;
import java.util.List;

/** The speeds at which a train that coasts comes to a place at a speed, worked out backwards. */
final class CoastCurve {
  /** Stretches of so many metres, with the acceleration in their middle. */
  private static final double STEP_M = 10;

  /** No further back, m. */
  private static final double LONGEST_M = 8000;

  private final double atM;

  /** At the place, and every step before it. */
  private final List<Double> speedsMps = new ArrayList<>();

  /**
   * To a speed at a place, as far back as the train is neither at a stand nor faster than {@code
   * mostMps}.
   */
  CoastCurve(TrainModels bench, double atM, double speedMps, double mostMps) {
    this.atM = atM;
    double v = speedMps;
    for (double back = 0; v > 0 && v < mostMps && back < Math.min(LONGEST_M, atM); back += STEP_M) {
      speedsMps.add(v);
      double middleM = Math.max(0, atM - back - STEP_M / 2);
      double then = v;
      for (int pass = 0; pass < 2; pass++) {
        double a = bench.accelerationMps2(-1, (v + then) / 2, middleM);
        then = Math.sqrt(Math.max(0, v * v - 2 * a * STEP_M));
      }
      v = then;
    }
  }

  /** The speed at a place before the end; infinite from further back than is known. */
  double mps(double placeM) {
    double steps = Math.max(0, (atM - placeM) / STEP_M);
    int i = (int) steps;
    if (i + 1 >= speedsMps.size()) {
      return i < speedsMps.size() && steps == i ? speedsMps.get(i) : Double.POSITIVE_INFINITY;
    }
    return speedsMps.get(i) + (steps - i) * (speedsMps.get(i + 1) - speedsMps.get(i));
  }
}
