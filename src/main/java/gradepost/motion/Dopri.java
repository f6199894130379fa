package gradepost.motion;

/**
 * One step of Dormand and Prince's 5(4) pair for {@code s' = v, v' = a(t, s, v)}, with its fourth
 * order interpolant (coefficients as in Hairer, Nørsett and Wanner, Solving Ordinary Differential
 * Equations I, II.4 and II.6). Keeps the last step for interpolation; allocates nothing.
 */
final class Dopri {
  static final double[] GAUSS_AT = {
    0.5 - 0.8611363115940526 / 2,
    0.5 - 0.3399810435848563 / 2,
    0.5 + 0.3399810435848563 / 2,
    0.5 + 0.8611363115940526 / 2
  };
  static final double[] GAUSS_WEIGHT = {
    0.3478548451374538 / 2, 0.6521451548625461 / 2, 0.6521451548625461 / 2, 0.3478548451374538 / 2
  };

  private static final double D1 = -12715105075.0 / 11282082432.0;
  private static final double D3 = 87487479700.0 / 32700410799.0;
  private static final double D4 = -10690763975.0 / 1880347072.0;
  private static final double D5 = 701980252875.0 / 199316789632.0;
  private static final double D6 = -1453857185.0 / 822651844.0;
  private static final double D7 = 69997945.0 / 29380423.0;

  private final Forces forces;

  private double h;
  private double s0;
  private double v0;
  private double startA;
  private double endA;
  private double s1;
  private double v1;
  // Interpolants: r1 + θ(r2 + (1−θ)(r3 + θ(r4 + (1−θ) r5))).
  private double sr2;
  private double sr3;
  private double sr4;
  private double sr5;
  private double vr2;
  private double vr3;
  private double vr4;
  private double vr5;

  Dopri(Forces forces) {
    this.forces = forces;
  }

  /**
   * Tries a step from a state whose acceleration is {@code a}; returns its error on a scale where 1
   * is as much as is allowed.
   */
  double step(double t, double s, double v, double a, double step, double tolS, double tolV) {
    h = step;
    s0 = s;
    v0 = v;
    startA = a;
    double a1 = a;
    double p1 = v;
    double p2 = v + h * (a1 / 5);
    double a2 = forces.acceleration(t + h / 5, s + h * (p1 / 5), p2);
    double p3 = v + h * (3.0 / 40 * a1 + 9.0 / 40 * a2);
    double a3 = forces.acceleration(t + 0.3 * h, s + h * (3.0 / 40 * p1 + 9.0 / 40 * p2), p3);
    double p4 = v + h * (44.0 / 45 * a1 - 56.0 / 15 * a2 + 32.0 / 9 * a3);
    double a4 =
        forces.acceleration(
            t + 0.8 * h, s + h * (44.0 / 45 * p1 - 56.0 / 15 * p2 + 32.0 / 9 * p3), p4);
    double p5 =
        v
            + h
                * (19372.0 / 6561 * a1
                    - 25360.0 / 2187 * a2
                    + 64448.0 / 6561 * a3
                    - 212.0 / 729 * a4);
    double a5 =
        forces.acceleration(
            t + 8.0 / 9 * h,
            s
                + h
                    * (19372.0 / 6561 * p1
                        - 25360.0 / 2187 * p2
                        + 64448.0 / 6561 * p3
                        - 212.0 / 729 * p4),
            p5);
    double p6 =
        v
            + h
                * (9017.0 / 3168 * a1
                    - 355.0 / 33 * a2
                    + 46732.0 / 5247 * a3
                    + 49.0 / 176 * a4
                    - 5103.0 / 18656 * a5);
    double a6 =
        forces.acceleration(
            t + h,
            s
                + h
                    * (9017.0 / 3168 * p1
                        - 355.0 / 33 * p2
                        + 46732.0 / 5247 * p3
                        + 49.0 / 176 * p4
                        - 5103.0 / 18656 * p5),
            p6);
    s1 =
        s
            + h
                * (35.0 / 384 * p1
                    + 500.0 / 1113 * p3
                    + 125.0 / 192 * p4
                    - 2187.0 / 6784 * p5
                    + 11.0 / 84 * p6);
    v1 =
        v
            + h
                * (35.0 / 384 * a1
                    + 500.0 / 1113 * a3
                    + 125.0 / 192 * a4
                    - 2187.0 / 6784 * a5
                    + 11.0 / 84 * a6);
    double p7 = v1;
    double a7 = forces.acceleration(t + h, s1, v1);
    endA = a7;
    interpolant(p1, p3, p4, p5, p6, p7, a1, a3, a4, a5, a6, a7);
    double errorS = h * Math.abs(error(p1, p3, p4, p5, p6, p7));
    double errorV = h * Math.abs(error(a1, a3, a4, a5, a6, a7));
    return Math.max(errorS / tolS, errorV / tolV);
  }

  private static double error(double k1, double k3, double k4, double k5, double k6, double k7) {
    return 71.0 / 57600 * k1
        - 71.0 / 16695 * k3
        + 71.0 / 1920 * k4
        - 17253.0 / 339200 * k5
        + 22.0 / 525 * k6
        - 1.0 / 40 * k7;
  }

  private void interpolant(
      double p1,
      double p3,
      double p4,
      double p5,
      double p6,
      double p7,
      double a1,
      double a3,
      double a4,
      double a5,
      double a6,
      double a7) {
    sr2 = s1 - s0;
    sr3 = h * p1 - sr2;
    sr4 = sr2 - h * p7 - sr3;
    sr5 = h * (D1 * p1 + D3 * p3 + D4 * p4 + D5 * p5 + D6 * p6 + D7 * p7);
    vr2 = v1 - v0;
    vr3 = h * a1 - vr2;
    vr4 = vr2 - h * a7 - vr3;
    vr5 = h * (D1 * a1 + D3 * a3 + D4 * a4 + D5 * a5 + D6 * a6 + D7 * a7);
  }

  double endS() {
    return s1;
  }

  double endV() {
    return v1;
  }

  /** Place at a share of the last step. */
  double placeAt(double share) {
    double rest = 1 - share;
    return s0 + share * (sr2 + rest * (sr3 + share * (sr4 + rest * sr5)));
  }

  /** Speed at a share of the last step. */
  double speedAt(double share) {
    double rest = 1 - share;
    return v0 + share * (vr2 + rest * (vr3 + share * (vr4 + rest * vr5)));
  }

  /** Greatest speed within the last step, also where the speed turns within it. */
  double highestV() {
    return startA > 0 && endA < 0 ? Math.max(v1, speedAt(turn())) : v1;
  }

  /** Least speed within the last step. */
  double lowestV() {
    return startA < 0 && endA > 0 ? Math.min(v1, speedAt(turn())) : v1;
  }

  /** Share of the last step at which the speed stops rising, or stops falling. */
  private double turn() {
    double low = 0;
    double high = 1;
    double sign = startA > 0 ? 1 : -1;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      double width = 1e-6;
      if (sign * (speedAt(middle + width) - speedAt(middle - width)) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** Time within the last step at which the place is met; it lies within the step. */
  double timeOfPlace(double place) {
    double low = 0;
    double high = 1;
    for (int i = 0; i < 60 && (high - low) * h > 1e-10; i++) {
      double middle =
          i % 3 == 2
              ? (low + high) / 2
              : inside(low, high, placeAt(low) - place, placeAt(high) - place);
      if (placeAt(middle) < place) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high * h;
  }

  /** Time within the last step at which the speed has risen to this. */
  double timeOfRise(double speed) {
    return timeOfSpeed(speed, v1 >= speed ? 1 : turn(), 1);
  }

  /** Time within the last step at which the speed has fallen to this. */
  double timeOfFall(double speed) {
    return timeOfSpeed(speed, v1 <= speed ? 1 : turn(), -1);
  }

  private double timeOfSpeed(double speed, double end, double sign) {
    double low = 0;
    double high = end;
    for (int i = 0; i < 60 && (high - low) * h > 1e-10; i++) {
      double middle =
          i % 3 == 2
              ? (low + high) / 2
              : inside(low, high, speedAt(low) - speed, speedAt(high) - speed);
      if (sign * (speedAt(middle) - speed) < 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high * h;
  }

  /** The chord's root, kept off the ends so that both of them close in. */
  private static double inside(double low, double high, double atLow, double atHigh) {
    double width = high - low;
    double root = atHigh == atLow ? low + width / 2 : low - atLow * width / (atHigh - atLow);
    return Math.min(Math.max(root, low + 1e-3 * width), high - 1e-3 * width);
  }
}
