package gradepost.drive.bound;

/**
 * The run of least energy on level track from a stand to a stand in a given time, in closed form:
 * full power to a speed V, V held, coasting to U, full brake, with {@code U = V² r'(V) / (r(V) + V
 * r'(V))}. Howlett, The optimal control of a train, Ann. Oper. Res. 98 (2000), from memory. Here V
 * is found by halving, so that the time is right, and each part by Simpson's rule over speed.
 *
 * <p>The train: r = 0.015 + 0.0004 v + 0.00006 v² N/kg, power min(0.60 N/kg, 9.0 W/kg ÷ v), brake
 * 0.70 N/kg, no rotating mass.
 */
record LevelOptimum(double heldMps, double coastedToMps, double heldM, double joulesPerKg) {
  private static final int STRIPS = 4000;
  private static final double BRAKE_N = 0.7;

  static double resistanceN(double v) {
    return 0.015 + 0.0004 * v + 0.00006 * v * v;
  }

  static double effortN(double v) {
    return v < 15 ? 0.6 : 9 / v;
  }

  /** Time and way between two speeds, and work of the effort. */
  private record Part(double seconds, double metres, double joules) {
    Part and(Part other) {
      return new Part(seconds + other.seconds, metres + other.metres, joules + other.joules);
    }
  }

  private interface Force {
    double at(double v);
  }

  private static Part part(double from, double to, Force effort, double brake) {
    Part all = new Part(0, 0, 0);
    double h = (to - from) / STRIPS;
    for (int i = 0; i <= STRIPS; i++) {
      double v = from + i * h;
      double weight = i == 0 || i == STRIPS ? 1 : i % 2 == 1 ? 4 : 2;
      double a = effort.at(v) - resistanceN(v) - brake;
      double s = weight * h / 3 / a;
      all = all.and(new Part(s, s * v, s * v * effort.at(v)));
    }
    return all;
  }

  private static LevelOptimum holding(double v, double metres, double[] seconds) {
    Part power = part(0, Math.min(v, 15), LevelOptimum::effortN, 0);
    if (v > 15) {
      power = power.and(part(15, v, u -> 9 / u, 0));
    }
    double slope = 0.0004 + 0.00012 * v;
    double u = v * v * slope / (resistanceN(v) + v * slope);
    Part coast = part(v, u, x -> 0, 0);
    Part brake = part(u, 0, x -> 0, BRAKE_N);
    double held = metres - power.metres() - coast.metres() - brake.metres();
    seconds[0] = power.seconds() + coast.seconds() + brake.seconds() + held / v;
    return new LevelOptimum(v, u, held, power.joules() + held * resistanceN(v));
  }

  static LevelOptimum of(double metres, double seconds) {
    double low = 5;
    double high = 29;
    double[] taken = new double[1];
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      holding(middle, metres, taken);
      if (taken[0] > seconds) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return holding(high, metres, taken);
  }
}
