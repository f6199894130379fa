package gradepost.motion;

import gradepost.stock.RunningResistance;
import gradepost.stock.law.AdhesionLaw;
import org.jspecify.annotations.Nullable;

/**
 * Moves one train along one track: Dormand and Prince's 5(4) pair (J. Comp. Appl. Math. 6, 1980)
 * with error control, stopped at every corner of the forces, with the ends of a leg located to a
 * nanosecond. Set the state, work the handles, {@link #advance} to the next condition.
 *
 * <p>For one thread. Allocates nothing while it advances.
 */
public final class Stepper {
  private static final double TOLERANCE_M = 1e-6;
  private static final double TOLERANCE_MPS = 1e-7;
  private static final double LONGEST_S = 8.0;
  private static final double FIRST_S = 4;

  /** Without a place or a time to end at, a speed not reached by now is never reached. */
  private static final double GIVE_UP_S = 3600;

  /** Nor is any place, after so long. */
  private static final double GIVE_UP_PLACE_S = 1e6;

  /** No sensible run takes more steps than this between two conditions. */
  private static final int MOST_STEPS = 1_000_000;

  /** A train at rest that would not even gather this stands. */
  private static final double STANDS_MPS2 = 1e-6;

  private final Forces forces;
  private final BrakeForce pull;
  private final DormandPrince54 dopri;
  private final Crossing crossing;

  private double t;
  private double s;
  private double v;
  private double takenOverM;
  private @Nullable Recorder recorder;
  private @Nullable Work work;
  private @Nullable Odometer odometer;

  /**
   * @param resistance of the train; a variant without its help for points on the safe side
   * @param track newtons of gradient and curves against distance run
   */
  public Stepper(
      Train train, RunningResistance resistance, PiecewiseLinear track, AdhesionLaw adhesion) {
    this(train, resistance, track, adhesion, LowAdhesionRail.none());
  }

  /**
   * @param poor stretches on which another law of adhesion holds
   */
  public Stepper(
      Train train,
      RunningResistance resistance,
      PiecewiseLinear track,
      AdhesionLaw adhesion,
      LowAdhesionRail poor) {
    this.forces = new Forces(train, resistance, track, adhesion, poor);
    this.pull = forces.brake();
    this.dopri = new DormandPrince54(forces);
    this.crossing = new Crossing(forces, dopri);
  }

  /** Puts the train somewhere, power off, brakes empty and fully charged. */
  public void place(double timeS, double atM, double speedMps) {
    t = timeS;
    s = atM;
    v = speedMps;
    forces.notch(-1);
    pull.clear();
  }

  /** Puts the train elsewhere, or at another speed, with handles and cylinders as they are. */
  public void move(double atM, double speedMps) {
    s = atM;
    v = speedMps;
  }

  /** The whole state, to come back to with {@link #restore}. */
  public Snapshot save() {
    return new Snapshot(t, s, v, forces.notch(), pull);
  }

  /** Goes back to a state that this stepper, or one for the same train, has saved. */
  public void restore(Snapshot kept) {
    t = kept.timeS;
    s = kept.atM;
    v = kept.speedMps;
    forces.notch(kept.notch);
    pull.restore(kept.rig, kept.cylinder, kept.charge);
  }

  /** Tells every step from now on to a recorder; null for none. */
  public void record(@Nullable Recorder newRecorder) {
    recorder = newRecorder;
    tell();
  }

  /** Counts the work of every force from now on; null stops counting. */
  public void count(@Nullable Work newWork) {
    work = newWork;
  }

  /** Time since the run began, seconds. */
  public double timeS() {
    return t;
  }

  /** Distance run of the front, metres. */
  public double atM() {
    return s;
  }

  /** Speed, metres a second. */
  public double speedMps() {
    return v;
  }

  /** Index of the notch, −1 for off. */
  public int notch() {
    return forces.notch();
  }

  /** Cylinder pressure of the leading vehicle, pascals. */
  public double pressurePa() {
    return pull.pressurePa(t);
  }

  /** Brake pressure that is asked for, pascals. */
  public double demandPa() {
    return pull.demandPa();
  }

  /** Whether the brake is off on every vehicle, and stays off. */
  public boolean brakeOff() {
    return pull.off(t);
  }

  /**
   * The most that this brake gives if it is asked now: less than full while its reservoirs still
   * fill after a release.
   */
  public double availablePa(TrainBrake other) {
    return pull.availablePa(other, t);
  }

  /** Seconds until the reservoirs of a brake that was let go are full again; 0 where they are. */
  public double refillS(TrainBrake released) {
    return pull.refillS(released, t);
  }

  /** Takes over what the reservoirs hold from a run of the same train at the same time. */
  public void chargeAs(Stepper other) {
    pull.chargeAs(other.pull);
  }

  /** Acceleration with the handles as they stand. */
  public double accelerationMps2() {
    return forces.select(t, s, v);
  }

  /** What the acceleration would be here in this notch (−1: off), without the brake. */
  public double accelerationInNotch(int other) {
    int kept = forces.notch();
    forces.notch(other);
    forces.select(t, s, v);
    double a = forces.unbraked(s, v);
    forces.notch(kept);
    return a;
  }

  /** Takes this notch; 0 is the first. */
  public void power(int newNotch) {
    forces.notch(newNotch);
    tell();
  }

  /** Takes power off. */
  public void shutOff() {
    forces.notch(-1);
    tell();
  }

  /**
   * Asks a brake for a cylinder pressure. Where another brake was in use the cylinders keep what
   * they have, and a vehicle further back then shows what the leading one shows, after this brake's
   * delay. A brake that cannot be eased answers a lower demand with a full release.
   */
  public void brake(TrainBrake newRig, double pressurePa) {
    boolean eased = pressurePa < pull.pressurePa(t) && !newRig.gradualRelease();
    pull.demand(newRig, t, eased ? 0 : Math.min(pressurePa, newRig.fullPa()));
    tell();
  }

  /** Counts the metres of every run from now on. */
  public void odometer(Odometer newOdometer) {
    odometer = newOdometer;
  }

  private void tell() {
    if (recorder != null) {
      recorder.point(t, s, v, pull.pressurePa(t), forces.notch());
    }
  }

  /**
   * Runs until the first of the conditions holds.
   *
   * @throws NoEnd after a million steps without one, or where a force is not a number
   */
  public StopReason advance(StopConditions until) {
    return advance(until, null);
  }

  /**
   * The same from a state from which runs were made before, all with the handles as they are.
   *
   * @param trail what is known of them; takes up what becomes known
   */
  public StopReason advance(StopConditions until, @Nullable Trail trail) {
    double from = s;
    StopReason ended = run(until, trail);
    if (odometer != null) {
      odometer.add(s - from - takenOverM);
    }
    return ended;
  }

  private StopReason run(StopConditions until, @Nullable Trail trail) {
    takenOverM = 0;
    if (s >= until.placeM) {
      return StopReason.PLACE;
    }
    if (t >= until.timeS) {
      return StopReason.TIME;
    }
    if (v >= until.speedUpMps) {
      return StopReason.SPEED_UP;
    }
    if (v <= until.speedDownMps) {
      return StopReason.SPEED_DOWN;
    }
    double patience = Double.isInfinite(until.placeM) ? GIVE_UP_S : GIVE_UP_PLACE_S;
    double end = Double.isInfinite(until.timeS) ? t + patience : until.timeS;
    double h = FIRST_S;
    int known = trail == null ? 0 : trail.stepsWithin(until, end);
    if (trail != null && known > 0) {
      takenOverM = trail.atM(known - 1) - s;
      t = trail.timeS(known - 1);
      s = trail.atM(known - 1);
      v = trail.speedMps(known - 1);
      h = trail.nextS(known - 1);
    }
    boolean goesOn = trail != null && known == trail.steps();
    for (int steps = known; t < end; steps++) {
      double a = forces.select(t, s, v);
      if (steps >= MOST_STEPS || Double.isNaN(a)) {
        throw noEnd(steps, a);
      }
      if (v <= 0 && a <= STANDS_MPS2) {
        v = 0;
        return StopReason.STANDSTILL;
      }
      double limit = limitS(a, end - t);
      double wanted = h < limit ? h : limit;
      double reachS = t + wanted;
      double step = wanted;
      double error = dopri.step(t, s, v, a, step, TOLERANCE_M, TOLERANCE_MPS);
      while (error > 1 && step > Crossing.AT_ONCE_S) {
        step *= Math.max(0.2, 0.9 * Math.pow(error, -0.2));
        error = dopri.step(t, s, v, a, step, TOLERANCE_M, TOLERANCE_MPS);
      }
      double tried = step;
      double first = crossing.first(until, t, v, step);
      if (first < step && crossing.bent()) {
        step = first;
        dopri.step(t, s, v, a, step, TOLERANCE_M, TOLERANCE_MPS);
      }
      if (work != null) {
        forces.tally(work, dopri, t, step, first / step);
      }
      t += first;
      s = first < step ? dopri.placeAt(first / step) : dopri.endS();
      v = first < step ? dopri.speedAt(first / step) : dopri.endV();
      StopReason ended = land(until);
      tell();
      if (ended != null) {
        return ended;
      }
      // A step that only a corner made short says nothing against longer ones.
      boolean cut = tried < h && tried == wanted;
      if (!cut || h < LONGEST_S) {
        double next = tried * (error < 1e-4 ? 5 : 0.9 * Math.pow(error, -0.2));
        h = cut && h > next ? h : next;
      }
      if (trail != null) {
        // Where the speed may turn, a lower one could be met within a step.
        goesOn = goesOn && reachS < end && a <= 0 && dopri.endA() <= 0;
        if (goesOn) {
          trail.add(t, s, v, h, reachS);
        }
      }
    }
    return StopReason.NEVER;
  }

  private NoEnd noEnd(int steps, double a) {
    return new NoEnd(
        "after %d steps the run is at %.3f m and %.3f m/s, with an acceleration of %.3f m/s2"
            .formatted(steps, s, v, a));
  }

  /** Puts the state exactly on what ended the step; what ended the leg, if anything did. */
  private @Nullable StopReason land(StopConditions until) {
    switch (crossing.what()) {
      case STOP -> {
        v = 0;
        return StopReason.STANDSTILL;
      }
      case PLACE -> {
        s = until.placeM;
        return StopReason.PLACE;
      }
      case UP -> {
        v = until.speedUpMps;
        return StopReason.SPEED_UP;
      }
      case DOWN -> {
        v = until.speedDownMps;
        return StopReason.SPEED_DOWN;
      }
      case CORNER -> v = crossing.cornerMps();
      case NOTHING -> {}
    }
    if (t >= until.timeS - 1e-12) {
      t = until.timeS;
      return StopReason.TIME;
    }
    return null;
  }

  /** Shortens a step so that it ends near the next corner of pressure or track, or at a stand. */
  private double limitS(double a, double mostS) {
    double limit = mostS < LONGEST_S ? mostS : LONGEST_S;
    double corner = pull.nextCornerS() - t;
    limit = corner < limit ? corner : limit;
    double ahead = forces.nextCornerM() - s;
    double gains = a > 0 ? a * limit : 0;
    if (2 * ahead < (2 * v + gains) * limit + Forces.CORNER_M) {
      limit = Math.min(limit, toCornerS(a, ahead));
    }
    if (a < 0 && v > 0) {
      // The laws of friction and adhesion do not hold for a train that runs back.
      double stands = v / -a + 1e-3;
      limit = stands < limit ? stands : limit;
    }
    return limit > Crossing.AT_ONCE_S ? limit : Crossing.AT_ONCE_S;
  }

  /** Time to the next corner of the track, and a hair over it; infinite where it is not met. */
  private double toCornerS(double a, double ahead) {
    double root = v * v + 2 * a * ahead;
    return root > 0
        ? 2 * ahead / (v + Math.sqrt(root)) + Forces.CORNER_M / 4 / Math.max(v, Forces.CORNER_M)
        : Double.POSITIVE_INFINITY;
  }
}
