package gradepost.drive.bound;

import java.util.function.DoubleUnaryOperator;

/**
 * A run over a made-up line, in steps of half a metre and in the middle of each: nothing of it is
 * shared with the bound. Full power to a speed, that speed held, coasting from a place on, the full
 * brake for the end and for every lower cap; power and brake hold the speed where they can.
 */
record SteppedRun(double seconds, double joulesPerKg) {
  static final double STEP_M = 0.5;

  /** A train and a line; all forces in N/kg, speeds in m/s, places in metres from the start. */
  record Line(
      double metres,
      DoubleUnaryOperator resistance,
      DoubleUnaryOperator effort,
      double brake,
      DoubleUnaryOperator track,
      DoubleUnaryOperator cap) {

    int steps() {
      return (int) Math.round(metres / STEP_M);
    }

    double mid(int step) {
      return (step + 0.5) * STEP_M;
    }

    /** Half the square of the greatest speed from which the brake still comes down in time. */
    double[] most() {
      double[] most = new double[steps() + 1];
      for (int i = steps() - 1; i >= 0; i--) {
        double cap = this.cap.applyAsDouble(mid(i));
        double v = Math.sqrt(2 * most[i + 1]);
        double slows = brake + resistance.applyAsDouble(v) + track.applyAsDouble(mid(i));
        most[i] = Math.min(cap * cap / 2, most[i + 1] + slows * STEP_M);
        most[i + 1] = Math.min(most[i + 1], cap * cap / 2);
      }
      return most;
    }
  }

  /**
   * Of a run that holds one speed and coasts to the end from one place on.
   *
   * @return infinitely long where it comes to a stand on the way
   */
  static SteppedRun of(Line line, double holdMps, double coastFromM) {
    double[] most = line.most();
    double hold = holdMps * holdMps / 2;
    double energy = 0;
    double seconds = 0;
    double joules = 0;
    for (int i = 0; i < line.steps(); i++) {
      double v = Math.sqrt(2 * energy);
      double drag = line.resistance().applyAsDouble(v) + line.track().applyAsDouble(line.mid(i));
      double coasted = energy - drag * STEP_M;
      double next = coasted;
      if (line.mid(i) < coastFromM && coasted < hold) {
        double effort = line.effort().applyAsDouble(v) * STEP_M;
        double wanted = Math.min(Math.min(hold, most[i + 1]), coasted + effort);
        next = Math.max(coasted, wanted);
      }
      next = Math.min(next, most[i + 1]);
      joules += Math.max(0, next - coasted);
      if (next <= 0 && i < line.steps() - 1) {
        return new SteppedRun(Double.POSITIVE_INFINITY, joules);
      }
      double then = Math.sqrt(2 * Math.max(0, next));
      seconds += 2 * STEP_M / (v + then);
      energy = Math.max(0, next);
    }
    return new SteppedRun(seconds, joules);
  }
}
