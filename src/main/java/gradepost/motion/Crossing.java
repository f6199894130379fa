package gradepost.motion;

/**
 * What a step meets before its end, and when: the conditions of a leg, and corners of the forces.
 */
final class Crossing {
  /** Shorter than this no step is. */
  static final double AT_ONCE_S = 1e-9;

  /** A corner met again as soon as it was left: the step goes over it, and stays this short. */
  private static final double OVER_A_CORNER_S = 0.05;

  /** What ends a step. */
  enum What {
    NOTHING,
    PLACE,
    UP,
    DOWN,
    STOP,
    /** A piece of the forces ends at this speed. */
    CORNER
  }

  private final Forces forces;
  private final DormandPrince54 dopri;

  private double t;
  private double v;
  private What crossed = What.NOTHING;
  private double cornerMps;
  private boolean bent;

  Crossing(Forces forces, DormandPrince54 dopri) {
    this.forces = forces;
    this.dopri = dopri;
  }

  /** What the last step met. */
  What what() {
    return crossed;
  }

  /** Where it met a corner of speed: that speed. */
  double cornerMps() {
    return cornerMps;
  }

  /** The earliest time within the step at which something is met; the step itself if nothing. */
  double first(StopConditions until, double fromS, double fromMps, double step) {
    t = fromS;
    v = fromMps;
    crossed = What.NOTHING;
    double first = step;
    if (dopri.endS() >= until.placeM) {
      first = sooner(What.PLACE, dopri.timeOfPlace(until.placeM), first);
    }
    double corner = forces.nextCornerM();
    if (dopri.endS() > corner + Forces.CORNER_M) {
      first = sooner(What.NOTHING, dopri.timeOfPlace(corner), first);
    }
    if (dopri.risesTo(until.speedUpMps)) {
      first = sooner(What.UP, dopri.timeOfRise(until.speedUpMps), first);
    }
    if (dopri.fallsTo(until.speedDownMps)) {
      first = sooner(What.DOWN, dopri.timeOfFall(until.speedDownMps), first);
    }
    if (v > 0 && dopri.fallsTo(0)) {
      first = sooner(What.STOP, dopri.timeOfFall(0), first);
    }
    double high = forces.highCornerMps();
    double low = forces.lowCornerMps();
    if (dopri.endV() > high) {
      first = corner(high, v >= high ? 0 : dopri.timeOfRise(high), first);
    } else if (dopri.endV() < low) {
      first = corner(low, v <= low ? 0 : dopri.timeOfFall(low), first);
    }
    first = kink(first, step);
    bent = first < step && (crossed == What.NOTHING || kinks(step));
    return first;
  }

  /**
   * Whether the step that was tried runs over a bend of the forces: what it says of the way before
   * what was met is not good enough then, and it is to be made again up to there.
   */
  boolean bent() {
    return bent;
  }

  private boolean kinks(double step) {
    return forces.pullsOrBrakes() && capped(step, 1) != capped(step, 0);
  }

  /** Where adhesion begins or ceases to hold a pull back the step ends too. */
  private double kink(double first, double step) {
    if (!forces.pullsOrBrakes()) {
      return first;
    }
    int before = capped(step, 0);
    double share = first / step;
    if (capped(step, share) == before) {
      return first;
    }
    double low = 0;
    double high = share;
    for (int i = 0; i < 30; i++) {
      double middle = (low + high) / 2;
      if (capped(step, middle) == before) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double at = high * step;
    if (at <= 10 * AT_ONCE_S || at >= first) {
      return first;
    }
    crossed = What.NOTHING;
    return at;
  }

  private int capped(double step, double share) {
    return forces.capped(t + share * step, dopri.placeAt(share), dopri.speedAt(share));
  }

  private double sooner(What what, double at, double first) {
    if (at > first) {
      return first;
    }
    crossed = what;
    return at;
  }

  private double corner(double speed, double at, double first) {
    if (at <= AT_ONCE_S) {
      if (first > OVER_A_CORNER_S) {
        crossed = What.NOTHING;
        return OVER_A_CORNER_S;
      }
      return first;
    }
    if (at >= first) {
      return first;
    }
    cornerMps = speed;
    crossed = What.CORNER;
    return at;
  }
}
