package gradepost.drive.grid;

import gradepost.drive.brake.BrakeCurve;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.ForceBalance;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.Stepper;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.policy.Margins;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Places and speeds of one leg, with the forces and the driver's rules between them. */
final class LegGrid {
  /** Of a train slower than a millimetre a second, which stands: that speed squared, m²/s². */
  private static final double STANDS_SQUARED = 1e-6;

  final PlannerSettings.Grid settings;
  final PlannerSettings.Way way;
  final double stepMps;
  final int notches;
  final int speeds;
  final double[] placeM;
  final double[] trackN;

  /** Highest speed at a place. */
  final double[] mostMps;

  /** Lowest speed at a place: that of a running brake test; else 0. */
  final double[] leastMps;

  /** By segment: power comes off, may be taken again, is forbidden; checked from, and down to. */
  final double[] offMps;

  final double[] onMps;
  final boolean[] dead;
  final double[] checkFromMps;
  final double[] checkToMps;

  /** By segment: pressure of a checking application. */
  final double[] checkPa;

  /** A brake slows the train this late, seconds. */
  final double lagS;

  /** What has to be braked for; and the same braked for further than need be. */
  final List<Curve> curves = new ArrayList<>();

  private final List<List<Curve>> curvesAt = new ArrayList<>();

  private final double inertiaKg;
  private final double[][] effortN;
  private final double[] resistanceN;
  private final double[] perPa;
  private final double thresholdPa;

  /**
   * A braking that ends at a place of the grid.
   *
   * @param from the place before which it cannot begin: the train would be too fast on the way
   * @param must whether the train is too fast past it
   * @param instead what is braked for where this one is reached, since the train would be too fast
   *     for it after this; else this one
   */
  record Curve(BrakeCurve brake, int from, int place, boolean must, int instead) {}

  LegGrid(
      Assignment assignment,
      TrainModels bench,
      DriverRules rules,
      List<Target> targets,
      double fromM,
      Function<Target, Braking> technique) {
    settings = bench.settings().grid();
    way = bench.settings().way();
    stepMps = settings.stepMps();
    Train train = bench.plannedTrain();
    inertiaKg = train.inertiaKg();
    TrainBrake rig = bench.slowing();
    ForceBalance balance = bench.plannedBalance();
    notches = train.effort().size();
    speeds = (int) Math.ceil(assignment.stock().maximum().metresPerSecond() / stepMps) + 2;
    effortN = new double[notches][speeds];
    resistanceN = new double[speeds];
    perPa = new double[speeds];
    thresholdPa = rig.thresholdPa();
    lagS = rules.checkLagS();
    double gain = Arrays.stream(rig.gainNPerPa()).sum();
    for (int i = 0; i < speeds; i++) {
      double v = i * stepMps;
      for (int n = 0; n < notches; n++) {
        effortN[n][i] = balance.effortN(n, v);
      }
      resistanceN[i] = train.resistance().atN(v);
      perPa[i] = gain * rig.blocks().friction(v);
    }
    double toM = targets.get(targets.size() - 1).atM();
    Margins margins = assignment.policy().margins();
    List<Target> ahead =
        targets.stream().filter(t -> t.standsThere() || t.aimM(margins) > fromM + 1).toList();
    TreeSet<Double> edges = new TreeSet<>(List.of(fromM, toM));
    for (double at = rules.nextEdge(fromM); at < toM - 0.1; at = rules.nextEdge(at)) {
      edges.add(at);
    }
    ahead.forEach(t -> edges.add(t.aimM(margins)));
    placeM = places(edges, settings.stepM());
    int parts = placeM.length - 1;
    trackN = new double[parts];
    offMps = new double[parts];
    onMps = new double[parts];
    checkFromMps = new double[parts];
    checkToMps = new double[parts];
    checkPa = new double[parts];
    dead = new boolean[parts];
    mostMps = new double[parts + 1];
    leastMps = new double[parts + 1];
    double riseWaitedS = assignment.policy().practice().handles().riseWaitedFor().seconds();
    PiecewiseLinear track = bench.plannedForce();
    for (int k = 0; k < parts; k++) {
      double middle = (placeM[k] + placeM[k + 1]) / 2;
      double ceiling = rules.ceilingAt(middle);
      trackN[k] = track.at(middle);
      double checked = rules.ceilingToCheckAt(middle);
      offMps[k] = rules.band().offMps(ceiling);
      onMps[k] = rules.band().onMps(ceiling);
      boolean rises = rules.nextRise(middle) - middle < riseWaitedS * ceiling;
      checkFromMps[k] = rises ? ceiling : rules.band().checkFromMps(checked);
      checkToMps[k] = rules.band().checkToMps(checked);
      dead[k] = rules.powerForbidden(middle);
      checkPa[k] = rules.checkPressurePa(middle, ceiling);
      double last = k == 0 ? 0 : rules.ceilingAt((placeM[k - 1] + placeM[k]) / 2);
      mostMps[k] = Math.min(last, ceiling);
    }
    rules.tests().forEach(this::bring);
    addCurves(assignment, bench, ahead, technique, fromM);
    for (int k = 0; k < parts; k++) {
      curvesAt.add(new ArrayList<>());
    }
    for (Curve curve : curves) {
      for (int k = curve.from(); k < curve.place(); k++) {
        curvesAt.get(k).add(curve);
      }
    }
  }

  /** What may be braked for from a segment. */
  List<Curve> curvesAt(int k) {
    return curvesAt.get(k);
  }

  /** The train comes to a running brake test at its speed, and is slower behind it. */
  private void bring(RunningTest test) {
    for (int k = 0; k < trackN.length; k++) {
      double most = test.coastsFromMps(placeM[k + 1]) + settings.slackMps();
      mostMps[k] = Math.min(mostMps[k], test.coastsFromMps(placeM[k]) + settings.slackMps());
      offMps[k] = Math.min(offMps[k], most);
      boolean during = placeM[k] > test.atM() - Slack.PLACE_M && placeM[k] < test.overM();
      trackN[k] += during ? test.dragN() : 0;
      if (Math.abs(placeM[k] - test.atM()) < Slack.PLACE_M) {
        leastMps[k] = test.leastMps();
      }
    }
  }

  private void addCurves(
      Assignment assignment,
      TrainModels bench,
      List<Target> targets,
      Function<Target, Braking> technique,
      double fromM) {
    Stepper stepper = bench.plannedStepper();
    double most = assignment.stock().maximum().metresPerSecond();
    List<BrakeCurve> brakes = new ArrayList<>();
    for (Target target : targets) {
      double aim = target.aimM(assignment.policy().margins());
      brakes.add(
          new BrakeCurve(
              bench.settings().brake(),
              stepper,
              target,
              technique.apply(target),
              aim,
              fromM,
              most));
    }
    for (int t = 0; t < targets.size(); t++) {
      BrakeCurve brake = brakes.get(t);
      int place = Arrays.binarySearch(placeM, brake.aimM());
      int instead = t;
      for (int next = t + 1; next < targets.size(); next++) {
        if (brakes.get(next).placeM(brake.freeMps()) < brake.aimM() - settings.sameAimM()) {
          instead = next;
        }
      }
      int from = 0;
      for (int k = 0; k < place; k++) {
        from = leastMps[k] > 0 ? k : from;
      }
      for (Curve ahead : curves) {
        boolean fast =
            brake.mostMps(ahead.brake().aimM()) > ahead.brake().freeMps() + settings.slackMps();
        from = fast ? Math.max(from, ahead.place()) : from;
      }
      curves.add(new Curve(brake, from, place, true, instead));
      for (int k = from; k < place; k++) {
        mostMps[k] = Math.min(mostMps[k], brake.mostMps(placeM[k]));
      }
      mostMps[place] = Math.min(mostMps[place], brake.freeMps());
    }
    for (int t = 0; t < targets.size(); t++) {
      Target target = targets.get(t);
      Braking usual = technique.apply(target);
      if (target.standsThere() || !usual.releases()) {
        continue;
      }
      for (double lower : settings.lowerReleasesMps()) {
        Braking further = Braking.downTo(assignment, bench, target, usual.releasedAtMps() - lower);
        if (further.aimMps() < usual.aimMps()) {
          double aim = brakes.get(t).aimM();
          BrakeCurve brake =
              new BrakeCurve(bench.settings().brake(), stepper, target, further, aim, fromM, most);
          Curve must = curves.get(t);
          curves.add(new Curve(brake, must.from(), must.place(), false, curves.size()));
        }
      }
    }
  }

  private static double[] places(SortedSet<Double> edges, double stepM) {
    TreeSet<Double> all = new TreeSet<>(edges);
    double last = edges.first();
    for (double place : edges) {
      int parts = (int) Math.ceil((place - last) / stepM - Slack.ROUNDING);
      for (int i = 1; i < parts; i++) {
        all.add(last + i * (place - last) / parts);
      }
      last = place;
    }
    return all.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Between which columns a speed lies, and at which share of the way from one to the other. */
  record Landing(int low, int high, double share) {}

  /** Where a speed lies at a place; null where it is above what is allowed there. */
  @Nullable Landing landing(int k, double v) {
    double most = mostMps[k];
    if (v > most + Slack.ROUNDING || v < leastMps[k]) {
      return null;
    }
    int i = Math.min((int) (v / stepMps), speeds - 1);
    boolean under = (i + 1) * stepMps < most;
    double width = under ? stepMps : most - i * stepMps;
    boolean top = width < Slack.ROUNDING || v >= most - Slack.ROUNDING;
    return new Landing(
        top ? speeds : i, under ? i + 1 : speeds, top ? 1 : (v - i * stepMps) / width);
  }

  /** Of two costs of which one may be out of reach: then the other one. */
  static double between(double low, double high, double share) {
    if (low + high == Double.POSITIVE_INFINITY) {
      return Math.min(low, high);
    }
    return low + share * (high - low);
  }

  /** Whether a checking application may come off: with what a step of the grid may hide. */
  boolean releases(int k, double v) {
    return v <= checkToMps[k] + settings.slackMps();
  }

  /** Whether a checking application may go on. */
  boolean mayCheck(int k, double v) {
    return v >= checkFromMps[k] - settings.slackMps();
  }

  /** Whether a train that gathers speed has to be checked. */
  boolean checks(int k, double v) {
    return v > checkFromMps[k] + settings.slackMps();
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

  private double brakeN(double pa, double v) {
    return Math.max(0, pa - thresholdPa) * at(perPa, v);
  }

  /**
   * Acceleration in a segment at a speed, m/s².
   *
   * @param notch −1 without power
   * @param pa pressure of the brake; without meaning in a notch
   */
  double accelerationMps2(int k, double v, int notch, double pa) {
    double pull = notch < 0 ? -brakeN(pa, v) : effort(notch, v);
    return (pull - (at(resistanceN, v) + trackN[k])) / inertiaKg;
  }

  private double at(double[] table, double v) {
    double place = v / stepMps;
    int i = Math.min((int) place, table.length - 2);
    return table[i] + (place - i) * (table[i + 1] - table[i]);
  }

  /**
   * Speed after a distance under a force that depends on speed; NaN where it comes to a stand.
   *
   * @param notch −1 without power
   * @param pa pressure of the brake
   */
  double after(int k, double v, double metres, int notch, double pa) {
    double then = v;
    for (int pass = 0; pass < 3; pass++) {
      double middle = (v + then) / 2;
      double square = v * v + 2 * accelerationMps2(k, middle, notch, pa) * metres;
      if (square <= STANDS_SQUARED) {
        return Double.NaN;
      }
      then = Math.sqrt(square);
    }
    return then;
  }
}
