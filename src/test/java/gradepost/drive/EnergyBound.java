package gradepost.drive;

import gradepost.motion.BrakeRig;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.Track;
import gradepost.motion.TrackForce;
import gradepost.motion.Train;
import gradepost.stock.AdhesionLaw;
import gradepost.stock.Stock;
import gradepost.units.Exact;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;

/**
 * The least energy that any driving could take a train from one stop to the next with, in a given
 * time: dynamic programming over places and speeds. At each place the train may take full power (of
 * the best notch), just enough to hold its speed, none, or any brake up to a limit; between those
 * no other control is ever best. It wants no notch in sequence, no build-up of the brake, no rail
 * gaps and no movements: so no plan that a driver could carry out needs less.
 *
 * <p>Time is priced: for a price λ in watts the least of {@code E + λ·T} less {@code λ·T} of the
 * plan is below the least energy for the plan's time, and the highest of these is the bound.
 */
final class EnergyBound {
  private static final double STEP_M = 20;

  /** So close to the stop the places are ten times as close. */
  private static final double FINE_M = 120;

  private static final double STEP_MPS = 0.05;

  private final double inertiaKg;
  private final double[] trackN;
  private final double[] placeM;
  private final double[] mostMps;
  private final double[] effortN;
  private final double[] brakeN;
  private final double[] resistanceN;

  /** Cost from a place on: by speed, and in the last column at the most that is allowed there. */
  private double[] next;

  private double[] here;

  EnergyBound(
      Assignment assignment,
      List<CeilingStep> ceiling,
      double fromM,
      double toM,
      DoubleUnaryOperator brakePa) {
    Stock stock = assignment.stock();
    Train train = Train.of(stock, assignment.formation(), assignment.load());
    inertiaKg = train.inertiaKg();
    BrakeRig rig =
        BrakeRig.of(stock, assignment.formation(), assignment.load(), train, stock.service(), 1, 0);
    AdhesionLaw adhesion = assignment.policy().plannedAdhesion().law();
    int speeds = (int) Math.ceil(stock.maximum().metresPerSecond() / STEP_MPS) + 2;
    effortN = new double[speeds];
    brakeN = new double[speeds];
    resistanceN = new double[speeds];
    double gain = 0;
    for (double g : rig.gainNPerPa()) {
      gain += g;
    }
    for (int i = 0; i < speeds; i++) {
      double speed = i * STEP_MPS;
      double best = 0;
      for (PiecewiseLinear notch : train.effort()) {
        best = Math.max(best, notch.at(speed));
      }
      effortN[i] = Math.min(best, adhesion.mu(speed) * train.motoredKg() * Exact.G);
      brakeN[i] =
          gain
              * Math.max(0, brakePa.applyAsDouble(speed) - rig.thresholdPa())
              * rig.blocks().friction(speed);
      resistanceN[i] = train.resistance().atN(speed);
    }
    placeM = places(ceiling, fromM, toM);
    PiecewiseLinear track =
        TrackForce.of(
            Track.of(assignment.path()), train, stock.curves(), stock.checkRailDragNPerKn());
    trackN = new double[placeM.length - 1];
    for (int k = 0; k < trackN.length; k++) {
      trackN[k] = track.at((placeM[k] + placeM[k + 1]) / 2);
    }
    mostMps = new double[placeM.length];
    most(ceiling);
    next = new double[speeds + 1];
    here = new double[speeds + 1];
  }

  private static double[] places(List<CeilingStep> ceiling, double fromM, double toM) {
    TreeSet<Double> places = new TreeSet<>(List.of(fromM, toM));
    for (CeilingStep step : ceiling) {
      if (step.fromM() > fromM + 0.1 && step.fromM() < toM - 0.1) {
        places.add(step.fromM());
      }
    }
    double fine = Math.max(fromM, toM - FINE_M);
    places.add(fine);
    TreeSet<Double> all = new TreeSet<>(places);
    double last = fromM;
    for (double place : places) {
      double step = place > fine ? STEP_M / 10 : STEP_M;
      int parts = (int) Math.ceil((place - last) / step);
      for (int i = 1; i < parts; i++) {
        all.add(last + i * (place - last) / parts);
      }
      last = place;
    }
    return all.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** The ceiling, and before each fall of it and the stop what the brake can still meet it from. */
  private void most(List<CeilingStep> ceiling) {
    int end = placeM.length - 1;
    for (int k = end - 1; k >= 0; k--) {
      double braked = mostMps[k + 1];
      double step = placeM[k + 1] - placeM[k];
      for (int pass = 0; pass < 4; pass++) {
        double middle = (mostMps[k + 1] + braked) / 2;
        double force = at(brakeN, middle) + against(k, middle);
        braked =
            Math.sqrt(Math.max(0, mostMps[k + 1] * mostMps[k + 1] + 2 * force / inertiaKg * step));
      }
      double before = k == 0 ? 0 : ceilingAt(ceiling, (placeM[k - 1] + placeM[k]) / 2);
      double after = ceilingAt(ceiling, (placeM[k] + placeM[k + 1]) / 2);
      mostMps[k] = Math.min(braked, k == 0 ? 0 : Math.min(before, after));
    }
  }

  private static double ceilingAt(List<CeilingStep> ceiling, double at) {
    return ceiling.stream()
        .filter(s -> at < s.toM())
        .findFirst()
        .orElse(ceiling.get(ceiling.size() - 1))
        .speedMps();
  }

  private static double at(double[] table, double speed) {
    double place = speed / STEP_MPS;
    int i = Math.min((int) place, table.length - 2);
    return table[i] + (place - i) * (table[i + 1] - table[i]);
  }

  /** Running resistance, gradient and curves between a place and the next. */
  private double against(int k, double speed) {
    return at(resistanceN, speed) + trackN[k];
  }

  /** The bound for a running time, joules. */
  double leastJ(double timeS) {
    double low = Math.log(1e4);
    double high = Math.log(2e7);
    double golden = (Math.sqrt(5) - 1) / 2;
    double a = high - golden * (high - low);
    double b = low + golden * (high - low);
    double atA = priced(Math.exp(a), timeS);
    double atB = priced(Math.exp(b), timeS);
    double best = Math.max(0, Math.max(atA, atB));
    for (int i = 0; i < 10; i++) {
      if (atA > atB) {
        high = b;
        b = a;
        atB = atA;
        a = high - golden * (high - low);
        atA = priced(Math.exp(a), timeS);
        best = Math.max(best, atA);
      } else {
        low = a;
        a = b;
        atA = atB;
        b = low + golden * (high - low);
        atB = priced(Math.exp(b), timeS);
        best = Math.max(best, atB);
      }
    }
    return best;
  }

  private double priced(double watts, double timeS) {
    int end = placeM.length - 1;
    java.util.Arrays.fill(next, Double.POSITIVE_INFINITY);
    next[next.length - 1] = 0;
    for (int k = end - 1; k >= 0; k--) {
      java.util.Arrays.fill(here, Double.POSITIVE_INFINITY);
      for (int i = 0; i * STEP_MPS < mostMps[k]; i++) {
        here[i] = best(k, i * STEP_MPS, watts);
      }
      here[here.length - 1] = best(k, mostMps[k], watts);
      double[] other = next;
      next = here;
      here = other;
    }
    return next[next.length - 1] - watts * timeS;
  }

  /** Cost from the next place on, with a speed between two of the grid or just under the most. */
  private double onward(int k, double speed) {
    double most = mostMps[k + 1];
    if (speed > most + 1e-9) {
      return Double.POSITIVE_INFINITY;
    }
    int i = (int) (speed / STEP_MPS);
    double above = (i + 1) * STEP_MPS;
    if (above < most) {
      double share = speed / STEP_MPS - i;
      return between(next[i], next[i + 1], share);
    }
    double top = next[next.length - 1];
    double width = most - i * STEP_MPS;
    if (width < 1e-9 || speed >= most - 1e-9) {
      return top;
    }
    return between(next[i], top, (speed - i * STEP_MPS) / width);
  }

  /** Of two costs of which one may be out of reach. */
  private static double between(double low, double high, double share) {
    return low + high == Double.POSITIVE_INFINITY ? low + high : low + share * (high - low);
  }

  private double best(int k, double speed, double watts) {
    double best = free(k, speed, watts, 1);
    best = Math.min(best, free(k, speed, watts, 0));
    best = Math.min(best, free(k, speed, watts, -1));
    best = Math.min(best, towards(k, speed, speed, watts));
    return Math.min(best, towards(k, speed, mostMps[k + 1], watts));
  }

  /** With full power, none, or the full brake. */
  private double free(int k, double speed, double watts, int sign) {
    double step = placeM[k + 1] - placeM[k];
    double then = speed;
    double pull = 0;
    for (int pass = 0; pass < 3; pass++) {
      double middle = (speed + then) / 2;
      pull = sign > 0 ? at(effortN, middle) : sign < 0 ? -at(brakeN, middle) : 0;
      double square = speed * speed + 2 * (pull - against(k, middle)) / inertiaKg * step;
      if (square <= 0) {
        return Double.POSITIVE_INFINITY;
      }
      then = Math.sqrt(square);
      if (then > mostMps[k + 1] + 1) {
        return Double.POSITIVE_INFINITY;
      }
    }
    return onward(k, then) + watts * 2 * step / (speed + then) + Math.max(0, pull) * step;
  }

  /** With as much power or brake as brings the train to this speed. */
  private double towards(int k, double speed, double then, double watts) {
    if (speed + then <= 0) {
      return Double.POSITIVE_INFINITY;
    }
    double step = placeM[k + 1] - placeM[k];
    double middle = (speed + then) / 2;
    double pull = inertiaKg * (then * then - speed * speed) / (2 * step) + against(k, middle);
    if (pull > at(effortN, middle) || -pull > at(brakeN, middle) * (1 + 1e-6) + 1) {
      return Double.POSITIVE_INFINITY;
    }
    return onward(k, then) + watts * 2 * step / (speed + then) + Math.max(0, pull) * step;
  }
}
