package gradepost.motion;

import org.jspecify.annotations.Nullable;

/**
 * The force of the brake that is in use. Between corners every cylinder pressure is linear in time,
 * so that the sum over the vehicles is one line as long as none of them is held by adhesion; only
 * then is it summed vehicle by vehicle.
 */
final class BrakeForce {
  private final AdhesionLimit grip;
  private final CylinderPressure cylinder = new CylinderPressure();
  private final Charge charge = new Charge();
  private final double[] pressedPa;
  private final double[] pressedPaPerS;

  private @Nullable TrainBrake rig;
  private @Nullable BlockCurve blocks;
  private double[] gain = new double[0];
  private double lastDelayS;

  private boolean pulling;
  private int blockPiece;
  private double fromS;
  private double toS;
  private double sumN;
  private double sumNPerS;

  /** Greatest pull of a vehicle within the present corners over its weight, at friction 1. */
  private double greatest;

  BrakeForce(AdhesionLimit grip) {
    this.grip = grip;
    this.pressedPa = new double[grip.vehicles()];
    this.pressedPaPerS = new double[grip.vehicles()];
    clear();
  }

  void clear() {
    rig = null;
    cylinder.clear();
    charge.clear();
    stale();
  }

  private void stale() {
    fromS = Double.POSITIVE_INFINITY;
    toS = Double.NEGATIVE_INFINITY;
  }

  @Nullable TrainBrake rig() {
    return rig;
  }

  void chargeAs(BrakeForce other) {
    charge.copyFrom(other.charge);
  }

  CylinderPressure saveTo(Charge keptCharge) {
    keptCharge.copyFrom(charge);
    return cylinder.kept();
  }

  void restore(@Nullable TrainBrake keptRig, CylinderPressure kept, Charge keptCharge) {
    if (keptRig == null) {
      rig = null;
    } else {
      use(keptRig);
    }
    cylinder.copyFrom(kept);
    charge.copyFrom(keptCharge);
    stale();
  }

  private void use(TrainBrake newRig) {
    if (!newRig.equals(rig)) {
      rig = newRig;
      gain = newRig.gainNPerPa();
      lastDelayS = newRig.lastDelayS();
      if (blocks == null || !blocks.law().equals(newRig.blocks())) {
        blocks = BlockCurve.of(newRig.blocks());
      }
    }
  }

  void demand(TrainBrake newRig, double timeS, double pressurePa) {
    use(newRig);
    double most = availablePa(newRig, timeS);
    charge.use(newRig, timeS, cylinder.at(timeS), pressurePa);
    cylinder.demand(newRig, timeS, Math.min(pressurePa, most));
    stale();
  }

  /** The most that this brake can put into its cylinders if asked now. */
  double availablePa(TrainBrake other, double timeS) {
    return Math.min(other.fullPa(), charge.availablePa(other, timeS, cylinder.at(timeS)));
  }

  /** Seconds until the reservoirs of a brake that was let go are full again. */
  double refillS(TrainBrake other, double timeS) {
    return charge.refillS(other, timeS);
  }

  /** Of the leading cylinder. */
  double pressurePa(double timeS) {
    return cylinder.at(timeS);
  }

  double demandPa() {
    return cylinder.demandPa();
  }

  /** Whether every cylinder is empty, and stays so. */
  boolean off(double timeS) {
    return cylinder.demandPa() == 0 && (rig == null || cylinder.settled(timeS, lastDelayS));
  }

  /** Picks the pieces that hold from this state on, as for a train that slows. */
  void select(double time, double speed) {
    if (rig == null || blocks == null) {
      pulling = false;
      return;
    }
    if (time < fromS || time + 1e-9 >= toS) {
      line(rig, time);
    }
    if (pulling) {
      blockPiece = blocks.piece(speed, true);
    }
  }

  /** Takes the piece of a train that gathers speed; whether it is another one. */
  boolean rises(double speed) {
    if (!pulling || blocks == null) {
      return false;
    }
    int before = blockPiece;
    blockPiece = blocks.piece(speed, false);
    return blockPiece != before;
  }

  /** Draws the line of the pull from this time to the next corner of any cylinder. */
  private void line(TrainBrake present, double time) {
    double[] delay = present.delayS();
    double threshold = present.thresholdPa();
    fromS = time;
    toS =
        cylinder.settled(time, lastDelayS)
            ? Double.POSITIVE_INFINITY
            : cylinder.nextCornerS(time, delay, lastDelayS);
    boolean rests = toS == Double.POSITIVE_INFINITY;
    sumN = 0;
    sumNPerS = 0;
    greatest = 0;
    pulling = !rests || cylinder.demandPa() > threshold;
    if (!pulling) {
      return;
    }
    for (int i = 0; i < gain.length; i++) {
      double now = above(threshold, rests ? cylinder.demandPa() : at(time, delay[i]));
      double then = rests ? now : above(threshold, at(toS, delay[i]));
      pressedPa[i] = now;
      pressedPaPerS[i] = rests ? 0 : (then - now) / (toS - time);
      sumN += gain[i] * now;
      sumNPerS += gain[i] * pressedPaPerS[i];
      double share = gain[i] * (now > then ? now : then) / grip.weightN(i);
      greatest = share > greatest ? share : greatest;
    }
    pulling = greatest > 0;
  }

  private static double above(double threshold, double pressurePa) {
    return pressurePa > threshold ? pressurePa - threshold : 0;
  }

  private double at(double time, double delay) {
    return cylinder.at(time - delay);
  }

  /** When a cylinder meets its next corner; infinite once all rest. */
  double nextCornerS() {
    return rig == null ? Double.POSITIVE_INFINITY : toS;
  }

  double lowCornerMps() {
    return pulling && blocks != null ? blocks.low(blockPiece) : Double.NEGATIVE_INFINITY;
  }

  double highCornerMps() {
    return pulling && blocks != null ? blocks.high(blockPiece) : Double.POSITIVE_INFINITY;
  }

  boolean pulls() {
    return pulling;
  }

  double forceN(double time, double at, double speed) {
    return pulling && blocks != null ? forceN(blocks, time, at, speed) : 0;
  }

  private double forceN(BlockCurve present, double time, double at, double speed) {
    double friction = present.friction(blockPiece, speed);
    double after = time - fromS;
    if (grip.ample(greatest * friction, speed)) {
      return friction * (sumN + sumNPerS * after);
    }
    double mu = grip.mu(speed);
    if (grip.even()) {
      double sum = 0;
      for (int i = 0; i < gain.length; i++) {
        double pull = gain[i] * (pressedPa[i] + pressedPaPerS[i] * after) * friction;
        sum += Math.min(pull, mu * grip.weightN(i));
      }
      return sum;
    }
    double less = grip.poorMu(speed) - mu;
    double sum = 0;
    for (int i = 0; i < gain.length; i++) {
      double pull = gain[i] * (pressedPa[i] + pressedPaPerS[i] * after) * friction;
      sum += Math.min(pull, (mu + less * grip.share(i, at)) * grip.weightN(i));
    }
    return sum;
  }

  /** How many vehicles adhesion holds back from their full pull. */
  int capped(double time, double at, double speed) {
    BlockCurve present = blocks;
    if (!pulling || present == null) {
      return 0;
    }
    double friction = present.friction(blockPiece, speed);
    if (grip.ample(greatest * friction, speed)) {
      return 0;
    }
    double mu = grip.mu(speed);
    if (grip.even() && greatest * friction <= mu) {
      return 0;
    }
    double less = grip.even() ? 0 : grip.poorMu(speed) - mu;
    double after = time - fromS;
    int count = 0;
    for (int i = 0; i < gain.length; i++) {
      double pull = gain[i] * (pressedPa[i] + pressedPaPerS[i] * after) * friction;
      double share = grip.even() ? 0 : grip.share(i, at);
      if (pull > (mu + less * share) * grip.weightN(i)) {
        count++;
      }
    }
    return count;
  }
}
