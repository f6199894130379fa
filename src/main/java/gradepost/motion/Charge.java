package gradepost.motion;

/**
 * What the reservoirs on the vehicles hold. An application takes from them; only after a release do
 * they fill again, at a rate, up to the pressure of the pipe. Full at first.
 */
final class Charge {
  private static final double FULL = Double.POSITIVE_INFINITY;

  /** Gauge pressure at {@link #sinceS}; above any pipe when full. */
  private double heldPa;

  private double sinceS;
  private double sinceCylinderPa;
  private boolean charging;

  Charge() {
    clear();
  }

  void clear() {
    heldPa = FULL;
    sinceS = 0;
    sinceCylinderPa = 0;
    charging = true;
  }

  /** Whether nothing was ever taken from them. */
  boolean untouched() {
    return charging && heldPa == FULL;
  }

  /** Takes over everything from another. */
  void copyFrom(Charge other) {
    heldPa = other.heldPa;
    sinceS = other.sinceS;
    sinceCylinderPa = other.sinceCylinderPa;
    charging = other.charging;
  }

  private double heldPa(TrainBrake.Reservoir reservoir, double timeS) {
    double gained = charging ? reservoir.rechargePaPerS() * (timeS - sinceS) : 0;
    return Math.min(reservoir.law().pipe().pascals(), heldPa + gained);
  }

  /** Where a full application from now on comes to rest. */
  double availablePa(TrainBrake rig, double timeS, double cylinderPa) {
    if (rig.reservoir().isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    TrainBrake.Reservoir reservoir = rig.reservoir().get();
    double from = charging ? cylinderPa : sinceCylinderPa;
    return reservoir.law().equalPa(heldPa(reservoir, timeS), from);
  }

  /** Seconds until the reservoirs are full again, from a release on; 0 where they always are. */
  double refillS(TrainBrake rig, double timeS) {
    if (rig.reservoir().isEmpty()) {
      return 0;
    }
    TrainBrake.Reservoir reservoir = rig.reservoir().get();
    double lacks = reservoir.law().pipe().pascals() - heldPa(reservoir, timeS);
    return lacks / reservoir.rechargePaPerS();
  }

  /** A demand changes the cylinders from what they hold now. */
  void use(TrainBrake rig, double timeS, double cylinderPa, double demandPa) {
    if (rig.reservoir().isEmpty()) {
      return;
    }
    TrainBrake.Reservoir reservoir = rig.reservoir().get();
    boolean releases = demandPa < cylinderPa;
    if (charging && !releases) {
      heldPa = heldPa(reservoir, timeS);
      sinceCylinderPa = cylinderPa;
      sinceS = timeS;
      charging = false;
    } else if (!charging && releases) {
      double left = reservoir.law().reservoirAfterPa(heldPa, sinceCylinderPa, cylinderPa);
      heldPa = Math.max(0, left);
      sinceS = timeS;
      charging = true;
    }
  }
}
