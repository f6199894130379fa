package gradepost.drive;

import gradepost.motion.BrakeRig;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.Train;
import gradepost.stock.AdhesionLaw;
import gradepost.units.Exact;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;

/** Places and speeds of one leg, with the forces and the driver's rules between them. */
final class LegGrid {
  private static final double FINE_M = 120;
  private static final int FINER = 6;
  private static final double CHECKING_MPS2 = 0.08;
  private static final double NEAR_TARGET_M = 800;

  final double stepM;
  final double stepMps;
  final double inertiaKg;
  final int notches;
  final int speeds;
  final double[] placeM;
  final double[] trackN;

  /** Highest speed at a place. */
  final double[] mostMps;

  /** By segment: power comes off, may be taken again, is forbidden; checked from. */
  final double[] offMps;

  final double[] onMps;
  final boolean[] dead;
  final double[] checkFromMps;

  /** At a place: the brake may be released at this speed or below. */
  final double[] releaseMps;

  /** By segment: what a checking or first application is at most. */
  private final double[] lightPa;

  /** By segment: the technique towards the next lower speed, where one is near. */
  private final Optional<Braking>[] towards;

  private final double[][] effortN;
  private final double[] resistanceN;
  private final double[] perPa;
  private final double[] techniquePa;
  private final double thresholdPa;

  /** A brake slows the train this late at least, seconds; the first application is held so long. */
  final double lagS;

  final double firstHeldS;
  final double firstStopPa;

  private final double lightestPa;

  LegGrid(
      Assignment assignment,
      Bench bench,
      DriverRules rules,
      List<Target> targets,
      double fromM,
      double toM,
      DoubleUnaryOperator heaviestPa,
      double stepM,
      double stepMps) {
    this.stepM = stepM;
    this.stepMps = stepMps;
    Train train = bench.plannedTrain();
    inertiaKg = train.inertiaKg();
    BrakeRig rig = bench.service();
    AdhesionLaw adhesion = assignment.policy().plannedAdhesion().law();
    notches = train.effort().size();
    speeds = (int) Math.ceil(assignment.stock().maximum().metresPerSecond() / stepMps) + 2;
    effortN = new double[notches][speeds];
    resistanceN = new double[speeds];
    perPa = new double[speeds];
    techniquePa = new double[speeds];
    thresholdPa = rig.thresholdPa();
    Braking stopping = Braking.of(assignment, bench, targets.get(targets.size() - 1));
    lagS = rig.deadTimeS() + (stopping.firstPa() + thresholdPa) / (2 * rig.applyPaPerS());
    lightestPa = assignment.policy().run().checkPressure().pascals();
    firstStopPa = stopping.firstPa();
    firstHeldS = stopping.firstHeldS();
    double gain = 0;
    for (double g : rig.gainNPerPa()) {
      gain += g;
    }
    for (int i = 0; i < speeds; i++) {
      double v = i * stepMps;
      for (int n = 0; n < notches; n++) {
        effortN[n][i] =
            Math.min(train.effort().get(n).at(v), adhesion.mu(v) * train.motoredKg() * Exact.G);
      }
      resistanceN[i] = train.resistance().atN(v);
      perPa[i] = gain * rig.blocks().friction(v);
      techniquePa[i] = heaviestPa.applyAsDouble(v);
    }
    TreeSet<Double> edges = new TreeSet<>(List.of(fromM, toM, Math.max(fromM, toM - FINE_M)));
    for (double at = rules.nextEdge(fromM); at < toM - 0.1; at = rules.nextEdge(at)) {
      edges.add(at);
    }
    double before = assignment.policy().margins().beforeBoard().metres();
    for (Target target : targets) {
      if (target.speedMps() > 0 && target.atM() - before > fromM + 1) {
        edges.add(target.atM() - before);
      }
    }
    placeM = places(edges, toM - FINE_M);
    int parts = placeM.length - 1;
    trackN = new double[parts];
    offMps = new double[parts];
    onMps = new double[parts];
    checkFromMps = new double[parts];
    dead = new boolean[parts];
    lightPa = new double[parts];
    towards = towards(assignment, bench, targets);
    mostMps = new double[parts + 1];
    releaseMps = new double[parts + 1];
    PiecewiseLinear track = bench.plannedForce();
    Margins margins = assignment.policy().margins();
    for (int k = 0; k < parts; k++) {
      double middle = (placeM[k] + placeM[k + 1]) / 2;
      double ceiling = rules.ceilingAt(middle);
      trackN[k] = track.at(middle);
      offMps[k] = rules.offMps(ceiling);
      onMps[k] = rules.onMps(ceiling);
      boolean rises = rules.nextRise(middle) - middle < 8 * ceiling;
      checkFromMps[k] = rises ? ceiling : Math.max(rules.checkFromMps(ceiling), 0);
      dead[k] = rules.powerForbidden(middle);
      lightPa[k] = rules.checkPressurePa(middle, ceiling);
      releaseMps[k] = rules.checkToMps(ceiling);
      if (towards[k].isPresent()) {
        Braking braking = towards[k].get();
        lightPa[k] = Math.max(lightPa[k], braking.firstPa());
        double release = braking.releases() ? braking.releasedAtMps() : braking.aimMps();
        releaseMps[k] = Math.min(releaseMps[k], release);
      }
    }
    for (int k = parts - 1; k >= 0; k--) {
      double after = rules.ceilingAt((placeM[k] + placeM[k + 1]) / 2);
      double ahead = k == 0 ? 0 : rules.ceilingAt((placeM[k - 1] + placeM[k]) / 2);
      double lower = Double.POSITIVE_INFINITY;
      for (Target target : targets) {
        if (target.speedMps() > 0 && Math.abs(target.atM() - before - placeM[k]) < 0.01) {
          lower = target.speedMps();
        }
      }
      double braked = brakedFrom(k);
      mostMps[k] = Math.min(braked, k == 0 ? 0 : Math.min(lower, Math.min(ahead, after)));
    }
  }

  private double[] places(TreeSet<Double> edges, double fineFromM) {
    TreeSet<Double> all = new TreeSet<>(edges);
    double last = edges.first();
    for (double place : edges) {
      double step = last >= fineFromM - 1e-6 ? stepM / FINER : stepM;
      int parts = (int) Math.ceil((place - last) / step - 1e-9);
      for (int i = 1; i < parts; i++) {
        all.add(last + i * (place - last) / parts);
      }
      last = place;
    }
    return all.stream().mapToDouble(Double::doubleValue).toArray();
  }

  @SuppressWarnings({"unchecked", "rawtypes"})
  private Optional<Braking>[] towards(Assignment assignment, Bench bench, List<Target> targets) {
    Optional<Braking>[] all = new Optional[placeM.length - 1];
    double before = assignment.policy().margins().beforeBoard().metres();
    for (int k = 0; k < all.length; k++) {
      all[k] = Optional.empty();
      for (Target target : targets) {
        double ahead = target.atM() - before - placeM[k];
        if (target.speedMps() > 0 && ahead > 0) {
          if (ahead < NEAR_TARGET_M) {
            all[k] = Optional.of(Braking.of(assignment, bench, target));
          }
          break;
        }
      }
    }
    return all;
  }

  /** Pressure of an application that is released again, at most. */
  double releasedPa(int k, boolean heavy) {
    return heavy && towards[k].isPresent()
        ? Math.max(lightPa[k], towards[k].get().mainPa())
        : lightPa[k];
  }

  private double brakedFrom(int k) {
    double then = mostMps[k + 1];
    double v = then;
    for (int pass = 0; pass < 4; pass++) {
      double middle = (then + v) / 2;
      double force = brakeN(techniqueAt(middle), middle) + againstN(k, middle);
      v = Math.sqrt(Math.max(0, then * then + 2 * force / inertiaKg * lengthM(k)));
    }
    return v;
  }

  /** Of two costs of which one may be out of reach: then the nearer one. */
  static double between(double low, double high, double share) {
    if (low + high == Double.POSITIVE_INFINITY) {
      return share < 0.5 ? low : high;
    }
    return low + share * (high - low);
  }

  double lengthM(int k) {
    return placeM[k + 1] - placeM[k];
  }

  int places() {
    return placeM.length;
  }

  double speed(int k, int i) {
    return i == speeds ? mostMps[k] : i * stepMps;
  }

  double effort(int notch, double v) {
    return at(effortN[notch], v);
  }

  double techniqueAt(double v) {
    return at(techniquePa, v);
  }

  double brakeN(double pa, double v) {
    return Math.max(0, pa - thresholdPa) * at(perPa, v);
  }

  double againstN(int k, double v) {
    return at(resistanceN, v) + trackN[k];
  }

  /** Least force of a brake that is on, newtons: of the lightest pressure, and it slows. */
  double leastBrakeN(int k, double v, boolean released) {
    double slows = Math.max(0, CHECKING_MPS2 * inertiaKg - againstN(k, v));
    return released ? Math.max(slows, brakeN(lightestPa, v)) : slows;
  }

  private double at(double[] table, double v) {
    double place = v / stepMps;
    int i = Math.min((int) place, table.length - 2);
    return table[i] + (place - i) * (table[i + 1] - table[i]);
  }

  /** Speed after a distance under a force that depends on speed; NaN where it comes to a stand. */
  double after(int k, double v, double metres, int notch) {
    double then = v;
    for (int pass = 0; pass < 3; pass++) {
      double middle = (v + then) / 2;
      double pull = notch < 0 ? 0 : effort(notch, middle);
      double square = v * v + 2 * (pull - againstN(k, middle)) / inertiaKg * metres;
      if (square <= 1e-6) {
        return Double.NaN;
      }
      then = Math.sqrt(square);
    }
    return then;
  }
}
