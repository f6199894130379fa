package gradepost.drive.grid;

import gradepost.drive.brake.Band;
import gradepost.drive.brake.Pressures;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.policy.PowerPractice;
import gradepost.policy.RunRules;
import gradepost.route.Path;
import gradepost.route.RailGap;
import gradepost.route.Stretch;
import gradepost.stock.Formation;
import gradepost.stock.Vehicle;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import java.util.ArrayList;
import java.util.List;

/**
 * The policy's rules of driving, turned into places and printable speeds for one run: where the
 * permissible speed may be used again (on the print grid, after the rear has cleared), the speed
 * band under it, and where no power may be taken.
 */
public final class DriverRules {
  private final Assignment assignment;
  private final TrainModels bench;
  private final DrivingStrategy manner;
  private final Band band;
  private final double checkLagS;
  private final List<CeilingStep> ceiling;
  private final List<Stretch> noPower;
  private final List<RunningTest> tests;

  private DriverRules(
      DriverRules other, DrivingStrategy manner, List<Stretch> noPower, List<RunningTest> tests) {
    this.assignment = other.assignment;
    this.bench = other.bench;
    this.manner = manner;
    this.band = new Band(manner.run(), other.unitMps());
    this.checkLagS = other.checkLagS;
    this.ceiling = other.ceiling;
    this.noPower = noPower;
    this.tests = tests;
  }

  /**
   * Of one run.
   *
   * @param startM from where it begins, metres run
   */
  public DriverRules(
      Assignment assignment,
      TrainModels bench,
      Ceiling resolved,
      double startM,
      DrivingStrategy manner) {
    this.assignment = assignment;
    this.bench = bench;
    this.manner = manner;
    this.band = new Band(manner.run(), assignment.route().units().speedUnitMps());
    this.checkLagS = bench.takesHoldS(run().checkPressure().pascals());
    this.ceiling = new ArrayList<>();
    this.noPower = new ArrayList<>();
    this.tests = List.of();
    Path path = assignment.path();
    List<CeilingStep> steps = resolved.steps();
    for (int i = 0; i < steps.size(); i++) {
      CeilingStep step = steps.get(i);
      boolean risesInto = i > 0 && step.speedMps() > steps.get(i - 1).speedMps();
      boolean risesOut = i + 1 < steps.size() && steps.get(i + 1).speedMps() > step.speedMps();
      double from = i == 0 ? step.fromM() : printed(path, step.fromM(), risesInto);
      double to = i + 1 == steps.size() ? step.toM() : printed(path, step.toM(), risesOut);
      if (to > from) {
        ceiling.add(new CeilingStep(from, to, step.speedMps(), step.cause()));
      }
    }
    for (RailGap gap : assignment.route().railGaps()) {
      if (Ceiling.stands(assignment, gap.applies())) {
        Stretch span = path.span(gap.extent());
        double from = path.printedAtOrBefore(span.fromM());
        double to =
            path.printedAtOrAfter(
                Math.min(span.toM() + leadingMotorM(assignment.formation()), path.lengthM()));
        if (startM < from || startM > to) {
          noPower.add(new Stretch(from, to));
        }
      }
    }
  }

  /** To the rear of the leading motored vehicle: past a gap it pulls, and the others follow. */
  private static double leadingMotorM(Formation formation) {
    double end = 0;
    for (Vehicle vehicle : formation.vehicles()) {
      end += vehicle.length().metres();
      if (vehicle.motored()) {
        break;
      }
    }
    return end;
  }

  private static double printed(Path path, double atM, boolean rises) {
    return rises ? path.printedAtOrAfter(atM) : path.printedAtOrBefore(atM);
  }

  /** The same run, driven in another manner. */
  public DriverRules in(DrivingStrategy other) {
    return new DriverRules(this, other, noPower, tests);
  }

  /** The same run with these running brake tests in it, in order of travel. */
  public DriverRules with(List<RunningTest> others) {
    List<Stretch> without = new ArrayList<>(noPower);
    others.forEach(t -> without.add(new Stretch(t.offM(), t.overM())));
    return new DriverRules(this, manner, without, List.copyOf(others));
  }

  /** The running brake tests of the run, in order of travel. */
  public List<RunningTest> tests() {
    return tests;
  }

  /** Faster than this here, the train would come too fast to a running brake test ahead. */
  public double coastsFromMps(double atM) {
    double mps = Double.POSITIVE_INFINITY;
    for (RunningTest test : tests) {
      mps = Math.min(mps, test.coastsFromMps(atM));
    }
    return mps;
  }

  /** Slower than this here, the train would come too slow to a running brake test close ahead. */
  public double neededMps(double atM) {
    double mps = 0;
    for (RunningTest test : tests) {
      mps = Math.max(mps, test.neededMps(atM, band.offMps(ceilingAt(atM))));
    }
    return mps;
  }

  /** In what manner it is driven. */
  public DrivingStrategy manner() {
    return manner;
  }

  /** The rules that these are made of. */
  public RunRules run() {
    return band.run();
  }

  /** The speeds under the ceiling between which power is taken and the brake checks. */
  public Band band() {
    return band;
  }

  /** The unit of the speedometer, m/s. */
  public double unitMps() {
    return band.unitMps();
  }

  /** A checking application slows the train this late, seconds. */
  public double checkLagS() {
    return checkLagS;
  }

  /** Where the ceiling rises next; infinite if it does not before it falls. */
  public double nextRise(double atM) {
    for (int i = 0; i + 1 < ceiling.size(); i++) {
      if (ceiling.get(i).toM() > atM + Slack.PLACE_M) {
        return ceiling.get(i + 1).speedMps() > ceiling.get(i).speedMps()
            ? ceiling.get(i).toM()
            : Double.POSITIVE_INFINITY;
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** The permissible speed that may be used at a place, m/s. */
  public double ceilingAt(double atM) {
    for (CeilingStep step : ceiling) {
      if (atM < step.toM() - Slack.PLACE_M) {
        return step.speedMps();
      }
    }
    return ceiling.get(ceiling.size() - 1).speedMps();
  }

  /**
   * The ceiling under which a train that gathers speed is checked: a lower one already so far
   * before it that the brake has taken hold by the policy's margin before the board.
   */
  public double ceilingToCheckAt(double atM) {
    for (int i = 0; i + 1 < ceiling.size(); i++) {
      if (atM < ceiling.get(i).toM() - Slack.PLACE_M) {
        double here = ceiling.get(i).speedMps();
        double next = ceiling.get(i + 1).speedMps();
        return next < here && atM >= checkedFromM(i) - Slack.PLACE_M ? next : here;
      }
    }
    return ceiling.get(ceiling.size() - 1).speedMps();
  }

  /** From where a train is checked for the ceiling behind this one, where that is lower. */
  private double checkedFromM(int index) {
    CeilingStep step = ceiling.get(index);
    double next = ceiling.get(index + 1).speedMps();
    double before = assignment.policy().margins().beforeBoard().metres() + checkLagS * next;
    return next < step.speedMps()
        ? assignment.path().printedAtOrBefore(Math.max(step.toM() - before, step.fromM()))
        : step.toM();
  }

  /**
   * The next place ahead at which the ceiling changes, for the run or for its checking, or a
   * stretch without power begins or ends.
   */
  public double nextEdge(double atM) {
    double next = Double.POSITIVE_INFINITY;
    for (int i = 0; i < ceiling.size(); i++) {
      if (ceiling.get(i).toM() > atM + Slack.PLACE_M) {
        double checked = i + 1 < ceiling.size() ? checkedFromM(i) : ceiling.get(i).toM();
        next = checked > atM + Slack.PLACE_M ? checked : ceiling.get(i).toM();
        break;
      }
    }
    for (Stretch zone : noPower) {
      next = earlier(next, atM, zone.fromM(), zone.toM());
    }
    for (RunningTest test : tests) {
      next = earlier(next, atM, test.runUpM(), test.offM(), test.atM(), test.overM());
    }
    return next;
  }

  private static double earlier(double next, double atM, double... edges) {
    double first = next;
    for (double edge : edges) {
      first = edge > atM + Slack.PLACE_M ? Math.min(first, edge) : first;
    }
    return first;
  }

  /** Whether no power may be taken at a place. */
  public boolean powerForbidden(double atM) {
    return noPower.stream()
        .anyMatch(z -> atM >= z.fromM() - Slack.PLACE_M && atM < z.toM() - Slack.PLACE_M);
  }

  /** Whether no power may be taken anywhere between two places. */
  public boolean powerForbidden(double fromM, double toM) {
    return noPower.stream()
        .anyMatch(z -> fromM < z.toM() - Slack.PLACE_M && toM > z.fromM() + Slack.PLACE_M);
  }

  /** How far it is to the far end of the next stretch without power. */
  public double pastNoPowerM(double atM) {
    return noPower.stream()
        .filter(z -> z.fromM() > atM)
        .mapToDouble(z -> z.toM() - atM)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** How far it is to the next stretch without power. */
  public double toNoPowerM(double atM) {
    return noPower.stream()
        .mapToDouble(z -> z.fromM() - atM)
        .filter(d -> d > 0)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** The lowest notch that does what is wanted at this speed against what lies ahead. */
  public int notchFor(double atM, double speedMps, boolean holding) {
    int highest = assignment.stock().traction().notches().size() - 1;
    PowerPractice practice = assignment.policy().practice().power();
    double aheadM = practice.gradientAhead().metres();
    double wanted = (holding ? practice.hold() : practice.gain()).metresPerSecond2();
    for (int n = 0; n < highest; n++) {
      boolean enough = true;
      for (double d = 0; d <= aheadM; d += bench.settings().run().aheadStepM()) {
        enough &= bench.accelerationMps2(n, speedMps, atM + d) >= wanted;
      }
      if (enough) {
        return n;
      }
    }
    return highest;
  }

  /** The running notch to keep where this one is wanted. */
  public int running(int notch) {
    return assignment.stock().traction().running(notch);
  }

  /** The lightest printable pressure that checks the speed on what lies ahead. */
  public double checkPressurePa(double atM, double speedMps) {
    double step = assignment.route().units().pressureStepPa();
    PowerPractice practice = assignment.policy().practice().power();
    double aheadM = practice.gradientAhead().metres();
    double steepest = Double.NEGATIVE_INFINITY;
    for (double d = 0; d <= aheadM; d += bench.settings().run().aheadStepM()) {
      steepest = Math.max(steepest, bench.accelerationMps2(-1, speedMps, atM + d));
    }
    double slows = practice.check().metresPerSecond2();
    double needed = bench.servicePressurePa(speedMps, steepest + slows, step);
    double least = run().checkPressure().pascals();
    return Pressures.asked(
        assignment.stock().service(),
        Math.max(least, needed),
        assignment.route().units().pressureStepPa());
  }
}
