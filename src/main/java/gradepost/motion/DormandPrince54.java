package gradepost.motion;

/**
 * One step of Dormand and Prince's 5(4) pair for {@code s' = v, v' = a(t, s, v)}, with its fourth
 * order interpolant (coefficients as in Hairer, Nørsett and Wanner, Solving Ordinary Differential
 * Equations I, II.4 and II.6). Keeps the last step for interpolation; allocates nothing.
 */
final class DormandPrince54 {
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
  private boolean placed;
  private boolean sped;
  // The stages of the last step that the interpolants are made of: speeds, accelerations.
  private double p3;
  private double p4;
  private double p5;
  private double p6;
  private double a3;
  private double a4;
  private double a5;
  private double a6;

  DormandPrince54(Forces forces) {
    this.forces = forces;
  }

  /**
   * Tries a step from a state whose acceleration is {@code a1}; returns its error on a scale where
   * 1 is as much as is allowed.
   */
  double step(double t, double s, double v, double a1, double h, double tolS, double tolV) {
    this.h = h;
    s0 = s;
    v0 = v;
    startA = a1;
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
    endA = forces.acceleration(t + h, s1, v1);
    this.p3 = p3;
    this.p4 = p4;
    this.p5 = p5;
    this.p6 = p6;
    this.a3 = a3;
    this.a4 = a4;
    this.a5 = a5;
    this.a6 = a6;
    placed = false;
    sped = false;
    double ofS = h * Math.abs(error(p1, p3, p4, p5, p6, v1)) / tolS;
    double ofV = h * Math.abs(error(a1, a3, a4, a5, a6, endA)) / tolV;
    return ofS > ofV ? ofS : ofV;
  }

  private static double error(double k1, double k3, double k4, double k5, double k6, double k7) {
    return 71.0 / 57600 * k1
        - 71.0 / 16695 * k3
        + 71.0 / 1920 * k4
        - 17253.0 / 339200 * k5
        + 22.0 / 525 * k6
        - 1.0 / 40 * k7;
  }

  /** Worked out only where a step is looked into. */
  private void interpolatePlace() {
    sr2 = s1 - s0;
    sr3 = h * v0 - sr2;
    sr4 = sr2 - h * v1 - sr3;
    sr5 = h * (D1 * v0 + D3 * p3 + D4 * p4 + D5 * p5 + D6 * p6 + D7 * v1);
    placed = true;
  }

  private void interpolateSpeed() {
    vr2 = v1 - v0;
    vr3 = h * startA - vr2;
    vr4 = vr2 - h * endA - vr3;
    vr5 = h * (D1 * startA + D3 * a3 + D4 * a4 + D5 * a5 + D6 * a6 + D7 * endA);
    sped = true;
  }

  double endS() {
    return s1;
  }

  double endV() {
    return v1;
  }

  /** Acceleration at the end of the last step. */
  double endA() {
    return endA;
  }

  /** Place at a share of the last step. */
  double placeAt(double share) {
    if (share == 0) {
      return s0;
    }
    if (share == 1) {
      return s0 + (s1 - s0);
    }
    if (!placed) {
      interpolatePlace();
    }
    double rest = 1 - share;
    return s0 + share * (sr2 + rest * (sr3 + share * (sr4 + rest * sr5)));
  }

  /** Speed at a share of the last step. */
  double speedAt(double share) {
    if (share == 0) {
      return v0;
    }
    if (share == 1) {
      return v0 + (v1 - v0);
    }
    if (!sped) {
      interpolateSpeed();
    }
    double rest = 1 - share;
    return v0 + share * (vr2 + rest * (vr3 + share * (vr4 + rest * vr5)));
  }

  /** Whether the speed comes up to this within the last step, also where it turns within it. */
  boolean risesTo(double speed) {
    boolean turns = v1 < speed && startA > 0 && endA < 0 && v0 + farthestV() >= speed;
    return v1 >= speed || (turns && speedAt(turn()) >= speed);
  }

  /** Whether the speed comes down to this within the last step. */
  boolean fallsTo(double speed) {
    boolean turns = v1 > speed && startA < 0 && endA > 0 && v0 - farthestV() <= speed;
    return v1 <= speed || (turns && speedAt(turn()) <= speed);
  }

  /** The speed goes no further than this from that at the start: spares a look for its turn. */
  private double farthestV() {
    interpolateSpeed();
    return Math.abs(vr2) + Math.abs(vr3) + Math.abs(vr4) + Math.abs(vr5) + 1e-6;
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
    double atLow = placeAt(low) - place;
    double atHigh = placeAt(high) - place;
    for (int i = 0; i < 60 && (high - low) * h > 1e-10; i++) {
      double middle = i % 3 == 2 ? (low + high) / 2 : inside(low, high, atLow, atHigh);
      double there = placeAt(middle);
      if (there < place) {
        low = middle;
        atLow = there - place;
      } else {
        high = middle;
        atHigh = there - place;
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
    double atLow = speedAt(low) - speed;
    double atHigh = speedAt(high) - speed;
    for (int i = 0; i < 60 && (high - low) * h > 1e-10; i++) {
      double middle = i % 3 == 2 ? (low + high) / 2 : inside(low, high, atLow, atHigh);
      double there = speedAt(middle) - speed;
      if (sign * there < 0) {
        low = middle;
        atLow = there;
      } else {
        high = middle;
        atHigh = there;
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
