package gradepost.motion;

/**
 * Pressure against time of a cylinder whose valve has no pipe before it, as demands follow one
 * another: after the dead time it moves towards the demand at the filling or emptying rate. Each
 * vehicle shows the same after its delay. Linear between corners.
 */
final class CylinderPressure {
  private static final int MOST_CORNERS = 64;

  private final double[] cornerS;
  private final double[] cornerPa;
  private int corners;
  private double demandPa;

  CylinderPressure() {
    this(MOST_CORNERS);
  }

  private CylinderPressure(int room) {
    cornerS = new double[room];
    cornerPa = new double[room];
  }

  /** The same as it is now, to be kept: it takes no more demands. */
  CylinderPressure kept() {
    CylinderPressure kept = new CylinderPressure(corners);
    kept.copyFrom(this);
    return kept;
  }

  /** All cylinders empty since ever. */
  void clear() {
    corners = 1;
    cornerS[0] = Double.NEGATIVE_INFINITY;
    cornerPa[0] = 0;
    demandPa = 0;
  }

  /** Takes over everything from another. */
  void copyFrom(CylinderPressure other) {
    System.arraycopy(other.cornerS, 0, cornerS, 0, other.corners);
    System.arraycopy(other.cornerPa, 0, cornerPa, 0, other.corners);
    corners = other.corners;
    demandPa = other.demandPa;
  }

  double demandPa() {
    return demandPa;
  }

  /** Asks for a pressure at this time; later demands must come later. */
  void demand(TrainBrake rig, double timeS, double pressurePa) {
    double from = timeS + rig.deadTimeS();
    double now = at(from);
    while (corners > 1 && cornerS[corners - 1] >= from) {
      corners--;
    }
    demandPa = pressurePa;
    add(from, now);
    double threshold = rig.thresholdPa();
    double rate = pressurePa >= now ? rig.applyPaPerS() : -rig.releasePaPerS();
    if ((now - threshold) * (pressurePa - threshold) < 0) {
      add(from + (threshold - now) / rate, threshold);
    }
    if (pressurePa != now) {
      add(from + (pressurePa - now) / rate, pressurePa);
    }
  }

  private void add(double timeS, double pressurePa) {
    if (corners == MOST_CORNERS) {
      // The oldest corner but the first is long past: every vehicle has seen it.
      System.arraycopy(cornerS, 2, cornerS, 1, corners - 2);
      System.arraycopy(cornerPa, 2, cornerPa, 1, corners - 2);
      cornerPa[0] = cornerPa[1];
      corners--;
    }
    cornerS[corners] = timeS;
    cornerPa[corners] = pressurePa;
    corners++;
  }

  /** Pressure of the leading cylinder. */
  double at(double timeS) {
    int i = corners - 1;
    if (timeS >= cornerS[i]) {
      return cornerPa[i];
    }
    while (i > 1 && timeS < cornerS[i - 1]) {
      i--;
    }
    // Here cornerS[i - 1] <= timeS < cornerS[i]; before the first real corner all is level.
    if (i == 1) {
      return cornerPa[0];
    }
    double share = (timeS - cornerS[i - 1]) / (cornerS[i] - cornerS[i - 1]);
    return cornerPa[i - 1] + share * (cornerPa[i] - cornerPa[i - 1]);
  }

  /** The next time after {@code timeS} at which some vehicle meets a corner; infinite if none. */
  double nextCornerS(double timeS, double[] delayS, double lastDelayS) {
    double next = Double.POSITIVE_INFINITY;
    for (int i = corners - 1; i >= 1 && cornerS[i] + lastDelayS > timeS; i--) {
      for (double delay : delayS) {
        double at = cornerS[i] + delay;
        if (at > timeS + 1e-9 && at < next) {
          next = at;
        }
      }
    }
    return next;
  }

  /** Whether every vehicle has met the last corner: all pressures are equal and rest. */
  boolean settled(double timeS, double lastDelayS) {
    return timeS + 1e-9 >= cornerS[corners - 1] + lastDelayS;
  }
}
