package gradepost.motion;

import gradepost.stock.AdhesionLaw;
import gradepost.stock.RunningResistance;
import gradepost.units.Exact;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Moves one train along one track: Dormand and Prince's 5(4) pair (J. Comp. Appl. Math. 6, 1980)
 * with error control, stopped at every corner of the forces, with the ends of a leg located to a
 * nanosecond. Set the state, work the handles, {@link #advance} to the next condition.
 */
public final class Stepper {
  private static final double TOLERANCE_M = 1e-6;
  private static final double TOLERANCE_MPS = 1e-7;
  private static final double LONGEST_S = 4.0;
  private static final double GIVE_UP_S = 3600;

  /**
   * Within this of a corner of the track force its piece may end: the force is continuous there.
   */
  private static final double CORNER_M = 0.01;

  private final double inertiaKg;
  private final double a0;
  private final double a1;
  private final double a2;
  private final PiecewiseLinear track;
  private final List<PiecewiseLinear> effort;
  private final AdhesionLaw adhesion;
  private final double motoredWeightN;
  private final double[] weightN;
  private final CylinderPressure cylinder = new CylinderPressure();
  private final Dopri dopri = new Dopri(this);

  private double t;
  private double s;
  private double v;
  private int notch = -1;
  private @Nullable BrakeRig rig;
  private @Nullable Recorder recorder;
  private @Nullable Work work;

  // The pieces that the right-hand side uses during one step.
  private int trackPiece;
  private double trackX;
  private double trackN;
  private double trackNPerM;
  private int effortPiece;
  private double effortV;
  private double effortN;
  private double effortNPerMps;
  private boolean braking;
  private boolean settled;

  /**
   * @param resistance of the train; a variant without its help for points on the safe side
   * @param track newtons of gradient and curves against distance run
   */
  public Stepper(
      Train train, RunningResistance resistance, PiecewiseLinear track, AdhesionLaw adhesion) {
    this.inertiaKg = train.inertiaKg();
    this.a0 = resistance.aN();
    this.a1 = resistance.bNsPerM();
    this.a2 = resistance.cNs2PerM2();
    this.track = track;
    this.effort = train.effort();
    this.adhesion = adhesion;
    this.motoredWeightN = train.motoredKg() * Exact.G;
    this.weightN = new double[train.vehicles()];
    for (int i = 0; i < weightN.length; i++) {
      weightN[i] = train.massKg()[i] * Exact.G;
    }
    cylinder.clear();
  }

  /** Puts the train somewhere, power off and brakes empty. */
  public void place(double timeS, double atM, double speedMps) {
    t = timeS;
    s = atM;
    v = speedMps;
    notch = -1;
    rig = null;
    cylinder.clear();
  }

  /** The whole state, to come back to with {@link #restore}. */
  public Snapshot save() {
    Snapshot kept = new Snapshot(t, s, v, notch, rig);
    kept.cylinder.copyFrom(cylinder);
    return kept;
  }

  /** Goes back to a state that this stepper, or one for the same train, has saved. */
  public void restore(Snapshot kept) {
    t = kept.timeS;
    s = kept.atM;
    v = kept.speedMps;
    notch = kept.notch;
    rig = kept.rig;
    cylinder.copyFrom(kept.cylinder);
  }

  public void record(@Nullable Recorder newRecorder) {
    recorder = newRecorder;
    tell();
  }

  /** Counts the work of every force from now on; null stops counting. */
  public void count(@Nullable Work newWork) {
    work = newWork;
  }

  public double timeS() {
    return t;
  }

  public double atM() {
    return s;
  }

  public double speedMps() {
    return v;
  }

  /** Index of the notch, −1 for off. */
  public int notch() {
    return notch;
  }

  public double pressurePa() {
    return cylinder.at(t);
  }

  public double demandPa() {
    return cylinder.demandPa();
  }

  /** Acceleration with the handles as they stand. */
  public double accelerationMps2() {
    select();
    return acceleration(t, s, v);
  }

  /** What the acceleration would be here in this notch (−1: off), without the brake. */
  public double accelerationInNotch(int other) {
    int kept = notch;
    notch = other;
    select();
    braking = false;
    double a = acceleration(t, s, v);
    notch = kept;
    return a;
  }

  public void power(int newNotch) {
    notch = newNotch;
    tell();
  }

  public void shutOff() {
    notch = -1;
    tell();
  }

  /**
   * Asks a brake for a cylinder pressure. The brake stays the same until its cylinders are empty. A
   * brake that cannot be eased answers a lower demand with a full release.
   */
  public void brake(BrakeRig newRig, double pressurePa) {
    rig = newRig;
    boolean eased = pressurePa < cylinder.at(t) && !newRig.gradualRelease();
    cylinder.demand(newRig, t, eased ? 0 : Math.min(pressurePa, newRig.fullPa()));
    tell();
  }

  private void tell() {
    if (recorder != null) {
      recorder.point(t, s, v, cylinder.at(t), notch);
    }
  }

  /** Runs until the first of the conditions holds. */
  public Ended advance(Until until) {
    if (s >= until.placeM) {
      return Ended.PLACE;
    }
    if (t >= until.timeS) {
      return Ended.TIME;
    }
    if (v >= until.speedUpMps) {
      return Ended.SPEED_UP;
    }
    if (v <= until.speedDownMps) {
      return Ended.SPEED_DOWN;
    }
    double end = t + GIVE_UP_S;
    double h = 0.5;
    select();
    if (v <= 0 && acceleration(t, s, 0) <= 0) {
      v = 0;
      return Ended.STANDSTILL;
    }
    while (t < end) {
      double limit = cornerLimitS(Math.min(Math.min(until.timeS, end) - t, LONGEST_S));
      double tried = Math.min(h, limit);
      double error = dopri.step(t, s, v, tried, TOLERANCE_M, TOLERANCE_MPS);
      double grow = error < 1e-10 ? 5 : Math.min(5, Math.max(0.2, 0.9 * Math.pow(error, -0.2)));
      h = tried * grow;
      if (error > 1) {
        continue;
      }
      Ended ended = null;
      double whole = tried;
      double first = cross(until, tried);
      if (first < tried) {
        tried = first;
        dopri.step(t, s, v, tried, TOLERANCE_M, TOLERANCE_MPS);
        h = whole - tried;
      }
      if (work != null) {
        tally(work, tried);
      }
      boolean wasMoving = v > 0;
      t += tried;
      s = dopri.endS();
      v = dopri.endV();
      if (crossed == Crossed.STOP || (wasMoving && v <= 0)) {
        v = 0;
        ended = Ended.STANDSTILL;
      } else if (crossed == Crossed.PLACE) {
        s = until.placeM;
        ended = Ended.PLACE;
      } else if (crossed == Crossed.UP) {
        v = until.speedUpMps;
        ended = Ended.SPEED_UP;
      } else if (crossed == Crossed.DOWN) {
        v = until.speedDownMps;
        ended = Ended.SPEED_DOWN;
      } else if (t >= until.timeS - 1e-12) {
        t = until.timeS;
        ended = Ended.TIME;
      }
      tell();
      if (ended != null) {
        return ended;
      }
      select();
      if (v <= 0 && acceleration(t, s, 0) <= 0) {
        v = 0;
        return Ended.STANDSTILL;
      }
    }
    return Ended.NEVER;
  }

  private enum Crossed {
    NOTHING,
    PLACE,
    UP,
    DOWN,
    STOP,
    EFFORT
  }

  private Crossed crossed = Crossed.NOTHING;

  /** The earliest time within the step at which a condition is met; the step itself if none. */
  private double cross(Until until, double step) {
    crossed = Crossed.NOTHING;
    double first = step;
    if (dopri.endS() >= until.placeM) {
      double at = dopri.timeOfPlace(until.placeM);
      if (at <= first) {
        first = at;
        crossed = Crossed.PLACE;
      }
    }
    if (dopri.endV() >= until.speedUpMps) {
      double at = dopri.timeOfSpeed(until.speedUpMps);
      if (at <= first) {
        first = at;
        crossed = Crossed.UP;
      }
    }
    if (dopri.endV() <= until.speedDownMps) {
      double at = dopri.timeOfSpeed(until.speedDownMps);
      if (at <= first) {
        first = at;
        crossed = Crossed.DOWN;
      }
    }
    if (dopri.endV() <= 0 && v > 0) {
      double at = dopri.timeOfSpeed(0);
      if (at <= first) {
        first = at;
        crossed = Crossed.STOP;
      }
    }
    if (notch >= 0) {
      PiecewiseLinear line = effort.get(notch);
      double low = line.x(effortPiece);
      double high = line.x(effortPiece + 1);
      if (dopri.endV() > high && effortPiece < line.knots() - 2) {
        double at = dopri.timeOfSpeed(high);
        if (at < first && at > 1e-9) {
          first = at;
          crossed = Crossed.EFFORT;
        }
      } else if (dopri.endV() < low && effortPiece > 0) {
        double at = dopri.timeOfSpeed(low);
        if (at < first && at > 1e-9) {
          first = at;
          crossed = Crossed.EFFORT;
        }
      }
    }
    return first;
  }

  /** Shortens a step so that it ends on the next corner of pressure or track force. */
  private double cornerLimitS(double limitS) {
    double limit = limitS;
    if (rig != null && !settled) {
      limit = Math.min(limit, cylinder.nextCornerS(t, rig.delayS(), rig.lastDelayS()) - t);
    }
    if (trackPiece < track.knots() - 2) {
      double ahead = track.x(trackPiece + 1) - s;
      double a = acceleration(t, s, v);
      double root = v * v + 2 * a * ahead;
      if (root > 0) {
        double time = 2 * ahead / (v + Math.sqrt(root));
        limit = Math.min(limit, time + CORNER_M / 4 / Math.max(v, CORNER_M));
      }
    }
    return Math.max(limit, 1e-9);
  }

  /** Picks the pieces of the forces that hold from the present state on. */
  private void select() {
    trackPiece = Math.min(trackPiece, track.knots() - 2);
    double probe = s + CORNER_M;
    if (trackPiece < 0 || track.x(trackPiece) > s + CORNER_M) {
      trackPiece = track.piece(probe);
    }
    while (trackPiece < track.knots() - 2 && track.x(trackPiece + 1) <= probe) {
      trackPiece++;
    }
    trackX = track.x(trackPiece);
    trackN = track.y(trackPiece);
    trackNPerM = track.slope(trackPiece);
    if (notch >= 0) {
      PiecewiseLinear line = effort.get(notch);
      effortPiece = line.piece(v + 1e-9);
      if (effortPiece > 0 && v - line.x(effortPiece) < 1e-7 && falling()) {
        effortPiece--;
      }
      effortV = line.x(effortPiece);
      effortN = line.y(effortPiece);
      effortNPerMps = line.slope(effortPiece);
    }
    braking = rig != null;
    if (rig != null) {
      settled = cylinder.settled(t, rig.lastDelayS());
      if (settled && cylinder.demandPa() <= 0) {
        braking = false;
      }
    }
  }

  private boolean falling() {
    PiecewiseLinear line = effort.get(notch);
    double force = Math.min(line.at(v), adhesion.mu(v) * motoredWeightN);
    return force - resistanceN(v) - trackForceN(s) < 0;
  }

  private double resistanceN(double speed) {
    return a0 + speed * (a1 + speed * a2);
  }

  private double trackForceN(double at) {
    return trackN + trackNPerM * (at - trackX);
  }

  private double tractionN(double speed) {
    if (notch < 0) {
      return 0;
    }
    double force = effortN + effortNPerMps * (speed - effortV);
    return Math.min(force, adhesion.mu(speed) * motoredWeightN);
  }

  private double brakeN(double time, double speed) {
    if (!braking || rig == null) {
      return 0;
    }
    BrakeRig present = rig;
    double friction = present.blocks().friction(speed);
    double mu = adhesion.mu(speed);
    double[] gain = present.gainNPerPa();
    double sum = 0;
    if (settled) {
      double pressed = Math.max(0, cylinder.demandPa() - present.thresholdPa()) * friction;
      for (int i = 0; i < gain.length; i++) {
        sum += Math.min(gain[i] * pressed, mu * weightN[i]);
      }
      return sum;
    }
    double[] delay = present.delayS();
    for (int i = 0; i < gain.length; i++) {
      double pressed = Math.max(0, cylinder.at(time - delay[i]) - present.thresholdPa()) * friction;
      sum += Math.min(gain[i] * pressed, mu * weightN[i]);
    }
    return sum;
  }

  /** The right-hand side: acceleration at this time, place and speed with the chosen pieces. */
  double acceleration(double time, double at, double speed) {
    return (tractionN(speed) - brakeN(time, speed) - resistanceN(speed) - trackForceN(at))
        / inertiaKg;
  }

  private void tally(Work sum, double step) {
    for (int i = 0; i < Dopri.GAUSS_AT.length; i++) {
      double share = Dopri.GAUSS_AT[i];
      double weight = Dopri.GAUSS_WEIGHT[i] * step;
      double at = dopri.placeAt(share);
      double speed = dopri.speedAt(share);
      sum.tractionJ += weight * tractionN(speed) * speed;
      sum.brakeJ -= weight * brakeN(t + share * step, speed) * speed;
      sum.resistanceJ -= weight * resistanceN(speed) * speed;
      sum.trackJ -= weight * trackForceN(at) * speed;
    }
  }
}
