package gradepost.motion;

import gradepost.route.Stretch;
import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeSystem;
import gradepost.stock.ConstantResistance;
import gradepost.stock.Davis1926;
import gradepost.stock.EffortPoint;
import gradepost.stock.LoadCase;
import gradepost.stock.QuadraticResistance;
import gradepost.stock.Railcar1936;
import gradepost.stock.ResistanceLaw;
import gradepost.stock.RotatingMass;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.Vehicle;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.BlockLaw;
import gradepost.stock.law.CastIronKarwatzki;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.ConstantBlocks;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.CurveResistance;
import gradepost.stock.law.DegreeCurveResistance;
import gradepost.stock.law.FrictionTable;
import gradepost.stock.law.InverseRadiusCurveResistance;
import gradepost.stock.law.RocklCurveResistance;
import gradepost.stock.law.ShareOf;
import gradepost.units.Length;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEIntegrator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * The equations of motion written a second time, from the figures of the train and the track and
 * nothing else, solved by Dormand and Prince's 8(5,3) pair of another library. Slow and plain.
 */
final class Oracle implements OrdinaryDifferentialEquation {
  private static final double G = 9.80665;

  /** Its error estimate overlooks kinks in long steps: millimetres with 0.5 s. */
  private static final double LONGEST_S = 0.05;

  private final Scenario in;
  private final double tolerance;
  private final double longestS;
  private final double[] massKg;
  private final double[] lengthM;
  private final double inertiaKg;
  private final double gainN;
  private final BrakeSystem brake;
  private final StatedBrakeForce law;

  /** The vehicle that each answers as late as; −1 where its brake is isolated. */
  private final int[] answersAs;

  private double t;
  private double s;
  private double v;
  private int notch = -1;

  /** Each demand for the leading cylinder: when it answers, and the pressure asked for. */
  private final List<double[]> demands = new ArrayList<>();

  long evaluations;

  Oracle(Scenario in, double tolerance) {
    this(in, tolerance, LONGEST_S);
  }

  Oracle(Scenario in, double tolerance, double longestS) {
    this.in = in;
    this.tolerance = tolerance;
    this.longestS = longestS;
    int n = in.formation.cars();
    massKg = new double[n];
    lengthM = new double[n];
    double inertia = 0;
    double stated = 0;
    for (int i = 0; i < n; i++) {
      Vehicle vehicle = in.formation.vehicles().get(i);
      massKg[i] = massOf(vehicle, in.load);
      lengthM[i] = vehicle.length().metres();
      double rotating = rotatingKg(vehicle);
      inertia += massKg[i] + rotating;
      stated += massOf(vehicle, in.stock.brakeForce().statedLoad()) + rotating;
    }
    inertiaKg = inertia;
    brake = in.stock.service();
    law = in.stock.brakeForce();
    // Mean over distance: half the square of the speed over the stopping distance, which is the
    // integral of v / deceleration; here by the midpoint rule.
    double from = law.statedFrom().metresPerSecond();
    double sum = 0;
    int strips = 400_000;
    for (int i = 0; i < strips; i++) {
      double speed = (i + 0.5) * from / strips;
      sum += speed / friction(law.blocks(), speed) * from / strips;
    }
    double meanN =
        (law.loadCompensated() ? inertia : stated) * law.meanDeceleration().metresPerSecond2();
    gainN = in.factor * meanN * sum / (from * from / 2);
    answersAs = answersAs();
  }

  /** One after the other the strongest brake is taken, of two as strong the heavier vehicle's. */
  private int[] answersAs() {
    int[] as = new int[massKg.length];
    int isolated = 0;
    for (; isolated < in.isolatedShare * massKg.length - 1e-9; isolated++) {
      int strongest = -1;
      for (int i = massKg.length - 1; i >= 0; i--) {
        boolean taken = as[i] < 0;
        if (!taken && (strongest < 0 || !stronger(strongest, i))) {
          strongest = i;
        }
      }
      as[strongest] = -1;
    }
    for (int i = 0; i < as.length; i++) {
      as[i] = as[i] < 0 ? -1 : isolated++;
    }
    return as;
  }

  private boolean stronger(int one, int other) {
    double by =
        in.formation.vehicles().get(one).brakeWeight()
            - in.formation.vehicles().get(other).brakeWeight();
    return by > 0 || (by == 0 && massKg[one] > massKg[other]);
  }

  /**
   * From the front of the train to where the wave has come to the valve: a vehicle's middle, or the
   * farther of the two places where it can be as the vehicle may stand either way round.
   */
  private double valveM(int vehicle) {
    double front = 0;
    for (int i = 0; i < vehicle; i++) {
      front += lengthM[i];
    }
    double length = lengthM[vehicle];
    double fromEnd =
        in.formation.vehicles().get(vehicle).valveAt().map(Length::metres).orElse(length / 2);
    return front + Math.max(fromEnd, length - fromEnd);
  }

  /** Wheels, axles and motors weigh the same under every load. */
  private static double rotatingKg(Vehicle vehicle) {
    if (vehicle.rotating() instanceof RotatingMass.ShareOfTare of) {
      return of.share() * vehicle.tare().kilograms();
    }
    return ((RotatingMass.Stated) vehicle.rotating()).mass().kilograms();
  }

  private static double massOf(Vehicle vehicle, LoadCase load) {
    return switch (load) {
      case TARE -> vehicle.tare().kilograms();
      case SEATED -> vehicle.seated().kilograms();
      case CRUSH -> vehicle.crush().kilograms();
    };
  }

  private static double friction(BlockLaw blocks, double speed) {
    double kmh = Math.max(0, speed) * 3.6;
    if (blocks instanceof ConstantBlocks) {
      return 1;
    }
    if (blocks instanceof CastIronKarwatzki) {
      return (kmh + 100) / (5 * kmh + 100);
    }
    if (blocks instanceof FrictionTable) {
      double mph = kmh / 1.609344;
      double[] at = {5, 10, 20, 30, 40, 50, 60};
      double[] mu = {0.273, 0.242, 0.192, 0.164, 0.140, 0.116, 0.074};
      return lookUp(at, mu, mph);
    }
    throw new AssertionError(blocks);
  }

  private static double lookUp(double[] x, double[] y, double at) {
    if (at <= x[0]) {
      return y[0];
    }
    for (int i = 1; i < x.length; i++) {
      if (at <= x[i]) {
        return y[i - 1] + (y[i] - y[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
      }
    }
    return y[y.length - 1];
  }

  private static double mu(AdhesionLaw law, double speed) {
    if (law instanceof ConstantAdhesion constant) {
      return constant.coefficient();
    }
    if (law instanceof CurtiusKniffler) {
      return 0.161 + 7.5 / (Math.max(0, speed) * 3.6 + 44);
    }
    ShareOf share = (ShareOf) law;
    return share.share() * mu(share.dry(), speed);
  }

  private double resistanceN(double speed) {
    ResistanceLaw form = in.stock.resistance();
    double tonnes = 0;
    double pounds = 0;
    boolean leads = true;
    for (int i = 0; i < massKg.length; i++) {
      tonnes += massKg[i] / 1000;
      if (form instanceof Davis1926 davis) {
        double shortTons = massKg[i] / 0.45359237 / 2000;
        int axles = in.formation.vehicles().get(i).axles();
        double w = shortTons / axles;
        double mph = speed / 0.44704;
        double area = leads ? davis.leadAreaSqFt() : davis.trailAreaSqFt();
        pounds +=
            shortTons * (1.3 + 29 / w + 0.045 * mph + 0.0005 * area * mph * mph / (w * axles));
        leads = false;
      }
    }
    if (form instanceof Davis1926) {
      return pounds * 0.45359237 * G;
    }
    if (form instanceof ConstantResistance constant) {
      return constant.nPerT() * tonnes;
    }
    if (form instanceof Railcar1936 railcar) {
      double tens = speed * 3.6 / 10;
      return G * (2.0 * tonnes + 0.25 * tens * tens * railcar.frontalAreaM2());
    }
    QuadraticResistance q = (QuadraticResistance) form;
    return tonnes * (q.aNPerT() + q.bNPerTPerMps() * speed)
        + (q.cLeadNs2PerM2() + q.cVehicleNs2PerM2() * massKg.length) * speed * speed;
  }

  private double curveNPerKn(CurvePiece curve) {
    CurveResistance form = in.stock.curves();
    double r = curve.radiusM();
    double own = 0;
    if (form instanceof RocklCurveResistance) {
      own = r >= 300 ? 650 / (r - 55) : 500 / (r - 30);
    } else if (form instanceof DegreeCurveResistance degree) {
      double degrees = 2 * Math.toDegrees(Math.asin(15.24 / r));
      own = degree.poundsPerTonPerDegree() * degrees / 2000 * 1000;
    } else if (form instanceof InverseRadiusCurveResistance inverse) {
      own = inverse.k() / r;
    }
    return own + (curve.checkRailed() ? in.stock.checkRailDragNPerKn() : 0);
  }

  /** Mean slope plus curve resistance under a vehicle, as a share of its weight. */
  private double heldBack(double rear, double front) {
    double sum = 0;
    double from = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < in.permille.length; i++) {
      double to = i == in.permille.length - 1 ? Double.POSITIVE_INFINITY : in.slopeEndM[i];
      sum += overlap(rear, front, from, to) * in.permille[i] / 1000;
      from = to;
    }
    for (CurvePiece curve : in.curves) {
      double within = overlap(rear, front, curve.fromM(), curve.toM());
      if (within > 0) {
        sum += within * curveNPerKn(curve) / 1000;
      }
    }
    return sum / (front - rear);
  }

  private static double overlap(double a, double b, double from, double to) {
    return Math.max(0, Math.min(b, to) - Math.max(a, from));
  }

  private double poorShare(double rear, double front) {
    // Overlapping stretches count once: walk along their joined cover.
    double covered = 0;
    double reached = rear;
    List<Stretch> list = new ArrayList<>(in.poor);
    list.sort((x, y) -> Double.compare(x.fromM(), y.fromM()));
    for (Stretch stretch : list) {
      double from = Math.max(reached, stretch.fromM());
      double to = Math.min(front, stretch.toM());
      if (to > from) {
        covered += to - from;
        reached = to;
      }
    }
    return covered / (front - rear);
  }

  private double leadingPa(double time) {
    double pressure = 0;
    for (int i = 0; i < demands.size(); i++) {
      double from = demands.get(i)[0];
      if (time <= from) {
        break;
      }
      double until = i + 1 < demands.size() ? Math.min(time, demands.get(i + 1)[0]) : time;
      double wanted = demands.get(i)[1];
      double span = until - from;
      pressure =
          wanted >= pressure
              ? Math.min(wanted, pressure + span * brake.application().pascalsPerSecond())
              : Math.max(wanted, pressure - span * brake.release().pascalsPerSecond());
    }
    return pressure;
  }

  private double acceleration(double time, double at, double speed) {
    double force = -resistanceN(speed);
    double front = at;
    double grip = mu(in.adhesion, speed);
    double poorGrip = mu(in.poorLaw, speed);
    double motoredN = 0;
    double weights = in.formation.vehicles().stream().mapToDouble(Vehicle::brakeWeight).sum();
    double pressable = law.statedPressure().pascals() - law.threshold().pascals();
    for (int i = 0; i < massKg.length; i++) {
      Vehicle vehicle = in.formation.vehicles().get(i);
      double rear = front - lengthM[i];
      double weight = massKg[i] * G;
      force -= weight * heldBack(rear, front);
      double poor = poorShare(rear, front);
      double own = grip * (1 - poor) + poorGrip * poor;
      motoredN += own * weight * vehicle.motoredShare();
      double delay = 0;
      if (brake.action() instanceof BrakeAction.Propagated along) {
        delay = valveM(Math.max(0, answersAs[i])) / along.speed().metresPerSecond();
      }
      double pressure = leadingPa(time - delay) - law.threshold().pascals();
      if (pressure > 0 && answersAs[i] >= 0) {
        double pull =
            gainN
                * vehicle.brakeWeight()
                / weights
                * pressure
                / pressable
                * friction(law.blocks(), speed);
        force -= Math.min(pull, own * weight);
      }
      front = rear;
    }
    if (notch >= 0) {
      List<EffortPoint> table = in.stock.traction().notches().get(notch).effort();
      double[] x = table.stream().mapToDouble(p -> p.speed().metresPerSecond()).toArray();
      double[] y = table.stream().mapToDouble(p -> p.effort().newtons()).toArray();
      long motors = in.formation.vehicles().stream().filter(k -> k.motoredShare() > 0).count();
      force += Math.min(motoredN, motors * lookUp(x, y, speed));
    }
    return force / inertiaKg;
  }

  void place(double atM, double speedMps) {
    t = 0;
    s = atM;
    v = speedMps;
    notch = -1;
    demands.clear();
  }

  void power(int newNotch) {
    notch = newNotch;
  }

  void brake(double pressurePa) {
    double answers = t + brake.action().deadTime().seconds();
    double wanted = Math.min(pressurePa, brake.full().pascals());
    if (!brake.gradualRelease() && pressurePa < leadingPa(t)) {
      wanted = 0;
    }
    demands.removeIf(d -> d[0] >= answers);
    demands.add(new double[] {answers, wanted});
  }

  double timeS() {
    return t;
  }

  double atM() {
    return s;
  }

  double speedMps() {
    return v;
  }

  /** Runs to a place, or to a stand before it. */
  void runTo(double placeM) {
    ODEIntegrator solver = new DormandPrince853Integrator(1e-13, longestS, tolerance, tolerance);
    solver.addEventDetector(new Zero(state -> state.getPrimaryState()[0] - placeM));
    solver.addEventDetector(new Zero(state -> state.getPrimaryState()[1]));
    ODEStateAndDerivative end =
        solver.integrate(this, new ODEState(t, new double[] {s, v}), t + 3000);
    t = end.getTime();
    s = end.getPrimaryState()[0];
    v = end.getPrimaryState()[1];
  }

  @Override
  public int getDimension() {
    return 2;
  }

  @Override
  public double[] computeDerivatives(double time, double[] y) {
    evaluations++;
    return new double[] {y[1], acceleration(time, y[0], y[1])};
  }

  private record Zero(java.util.function.ToDoubleFunction<ODEStateAndDerivative> value)
      implements ODEEventDetector {
    @Override
    public AdaptableInterval getMaxCheckInterval() {
      return AdaptableInterval.of(0.5);
    }

    @Override
    public int getMaxIterationCount() {
      return 200;
    }

    @Override
    public BracketedUnivariateSolver<UnivariateFunction> getSolver() {
      return new BracketingNthOrderBrentSolver(0, 1e-12, 0, 5);
    }

    @Override
    public ODEEventHandler getHandler() {
      return (state, detector, increasing) -> Action.STOP;
    }

    @Override
    public double g(ODEStateAndDerivative state) {
      return value.applyAsDouble(state);
    }
  }
}
