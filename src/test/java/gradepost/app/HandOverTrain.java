package gradepost.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
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
 * A braked train as somebody would write it who has nothing but a hand-over file: the equations of
 * motion once more, solved by Dormand and Prince's 8(5,3) pair of another library.
 */
final class HandOverTrain implements OrdinaryDifferentialEquation {
  private static final double TOLERANCE = 1e-10;

  /** Vehicles that meet a change of gradient make kinks that longer steps overlook. */
  private static final double LONGEST_S = 0.25;

  private final double gravity;
  private final double[] massKg;
  private final double[] lengthM;
  private final double inertiaKg;
  private final double[] resistance = new double[3];
  private final double[] knotM;
  private final double[] heightM;
  private final double[] dragNM;
  private final JsonNode brake;
  private final double[] delayS;
  private final double[] gainNPerPa;
  private final double thresholdPa;
  private final JsonNode blocks;
  private final JsonNode adhesion;
  private final double[] poorFromM;
  private final double[] poorToM;

  /** Pressure of the leading cylinder: corners of a broken line. */
  private final List<double[]> corners = new ArrayList<>();

  private double t;
  private double s;
  private double v;

  /**
   * @param which {@code planned} or {@code safeSide}
   * @param brakeName its short name
   * @param adhesion the case, with what holds on low-adhesion sites where it says so
   */
  HandOverTrain(JsonNode file, String which, String brakeName, JsonNode adhesion) {
    JsonNode train = file.at("/train/" + which);
    JsonNode track = file.get("track");
    gravity = track.get("freeFallMps2").doubleValue();
    massKg = numbers(train.get("massKg"));
    lengthM = numbers(train.get("lengthM"));
    inertiaKg = train.get("inertiaKg").doubleValue();
    boolean helped =
        which.equals("planned")
            || file.at("/train/safeSideCountsRunningAndCurveResistance").booleanValue();
    if (helped) {
      resistance[0] = train.at("/resistance/aN").doubleValue();
      resistance[1] = train.at("/resistance/bNsPerM").doubleValue();
      resistance[2] = train.at("/resistance/cNs2PerM2").doubleValue();
    }
    brake = train.get("brakes").get(brakeName);
    delayS = numbers(brake.get("delayS"));
    gainNPerPa = numbers(brake.get("gainNPerPa"));
    thresholdPa = brake.get("thresholdPa").doubleValue();
    blocks = brake.get("blocks");
    this.adhesion = adhesion;
    JsonNode sites = file.get("lowAdhesionSites");
    poorFromM = numbers(sites, "fromM");
    poorToM = numbers(sites, "toM");
    JsonNode elevation = track.get("elevation");
    double[] at = numbers(elevation, "atM");
    double[] height = numbers(elevation, "elevationM");
    TreeSet<Double> knots = new TreeSet<>();
    for (double x : at) {
      knots.add(x);
    }
    for (JsonNode curve : track.get("curves")) {
      knots.add(curve.get("fromM").doubleValue());
      knots.add(curve.get("toM").doubleValue());
    }
    knotM = knots.stream().mapToDouble(Double::doubleValue).toArray();
    heightM = new double[knotM.length];
    dragNM = new double[knotM.length];
    for (int i = 0; i < knotM.length; i++) {
      heightM[i] = line(at, height, knotM[i]);
      if (i > 0 && helped) {
        double perKn = curveNPerKn(file, (knotM[i - 1] + knotM[i]) / 2);
        dragNM[i] = dragNM[i - 1] + perKn / 1000 * (knotM[i] - knotM[i - 1]);
      }
    }
  }

  /** Newtons for each kilonewton of weight at a place; of two curves the worse. */
  private static double curveNPerKn(JsonNode file, double place) {
    JsonNode train = file.get("train");
    double worst = 0;
    for (JsonNode curve : file.at("/track/curves")) {
      if (curve.get("fromM").doubleValue() < place && place < curve.get("toM").doubleValue()) {
        double r = curve.get("radiusM").doubleValue();
        JsonNode law = train.get("curveLaw");
        double own =
            switch (law.get("kind").textValue()) {
              case "RocklCurve" -> r < 300 ? 500 / (r - 30) : 650 / (r - 55);
              case "DegreeCurve" ->
                  law.get("poundsPerTonPerDegree").doubleValue()
                      / 2
                      * Math.toDegrees(2 * Math.asin(50 * 0.3048 / r));
              default -> throw new AssertionError(law);
            };
        if (curve.get("checkRailed").booleanValue()) {
          own += train.get("checkRailDragNPerKn").doubleValue();
        }
        worst = Math.max(worst, own);
      }
    }
    return worst;
  }

  private static double[] numbers(JsonNode list) {
    double[] out = new double[list.size()];
    for (int i = 0; i < out.length; i++) {
      out[i] = list.get(i).doubleValue();
    }
    return out;
  }

  private static double[] numbers(JsonNode list, String field) {
    double[] out = new double[list.size()];
    for (int i = 0; i < out.length; i++) {
      out[i] = list.get(i).get(field).doubleValue();
    }
    return out;
  }

  /** A broken line; its end pieces go on. */
  private static double line(double[] x, double[] y, double at) {
    int i = 1;
    while (i < x.length - 1 && x[i] < at) {
      i++;
    }
    return y[i - 1] + (y[i] - y[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
  }

  private double friction(double speed) {
    return switch (blocks.get("kind").textValue()) {
      case "ConstantBlocks" -> 1;
      case "CastIronKarwatzki" -> (3.6 * speed + 100) / (5 * 3.6 * speed + 100);
      default -> throw new AssertionError(blocks);
    };
  }

  private static double mu(JsonNode law, double speed) {
    return switch (law.get("kind").textValue()) {
      case "CurtiusKniffler" -> 0.161 + 7.5 / (3.6 * speed + 44);
      case "ConstantAdhesion" -> law.get("coefficient").doubleValue();
      case "ShareOf" -> law.get("share").doubleValue() * mu(law.get("dry"), speed);
      default -> throw new AssertionError(law);
    };
  }

  void place(double timeS, double atM, double speedMps) {
    t = timeS;
    s = atM;
    v = speedMps;
    corners.clear();
    corners.add(new double[] {Double.NEGATIVE_INFINITY, 0});
  }

  private double leadingPa(double time) {
    int i = corners.size() - 1;
    while (corners.get(i)[0] > time) {
      i--;
    }
    double[] from = corners.get(i);
    if (i + 1 == corners.size() || i == 0) {
      return from[1];
    }
    double[] to = corners.get(i + 1);
    return from[1] + (to[1] - from[1]) * (time - from[0]) / (to[0] - from[0]);
  }

  double pressurePa() {
    return leadingPa(t);
  }

  double releaseS() {
    return brake.get("deadTimeS").doubleValue()
        + pressurePa() / brake.get("releasePaPerS").doubleValue();
  }

  double fullPa() {
    return brake.get("fullPa").doubleValue();
  }

  void brake(double pressurePa) {
    double answers = t + brake.get("deadTimeS").doubleValue();
    double now = leadingPa(answers);
    corners.removeIf(c -> c[0] >= answers);
    corners.add(new double[] {answers, now});
    double rate = brake.get(pressurePa > now ? "applyPaPerS" : "releasePaPerS").doubleValue();
    corners.add(new double[] {answers + Math.abs(pressurePa - now) / rate, pressurePa});
  }

  @Override
  public int getDimension() {
    return 2;
  }

  @Override
  public double[] computeDerivatives(double time, double[] y) {
    double speed = Math.max(0, y[1]);
    double force = -resistance[0] - speed * (resistance[1] + speed * resistance[2]);
    double friction = friction(speed);
    double mu = mu(adhesion.get("law"), speed);
    double onSites = adhesion.has("sites") ? mu(adhesion.get("sites"), speed) : mu;
    double front = y[0];
    double frontHeight = line(knotM, heightM, front) + line(knotM, dragNM, front);
    for (int i = 0; i < massKg.length; i++) {
      double rear = front - lengthM[i];
      double rearHeight = line(knotM, heightM, rear) + line(knotM, dragNM, rear);
      double weight = massKg[i] * gravity;
      force -= weight * (frontHeight - rearHeight) / lengthM[i];
      double pressed = Math.max(0, leadingPa(time - delayS[i]) - thresholdPa);
      double grip = mu + (onSites - mu) * poorShare(rear, front);
      force -= Math.min(gainNPerPa[i] * pressed * friction, grip * weight);
      front = rear;
      frontHeight = rearHeight;
    }
    return new double[] {y[1], force / inertiaKg};
  }

  /** Share of a vehicle that is on low-adhesion sites. */
  private double poorShare(double rear, double front) {
    double on = 0;
    for (int i = 0; i < poorFromM.length; i++) {
      on += Math.max(0, Math.min(front, poorToM[i]) - Math.max(rear, poorFromM[i]));
    }
    return on / (front - rear);
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

  void runToPlace(double placeM) {
    run(state -> state.getPrimaryState()[0] - placeM, 3000);
  }

  /** Runs until the speed has fallen to this; zero is a stand. */
  void runToSpeed(double speedMps) {
    if (v > speedMps) {
      run(state -> state.getPrimaryState()[1] - speedMps, 3000);
    }
  }

  void runFor(double seconds) {
    run(state -> -1, seconds);
  }

  private void run(ToDoubleFunction<ODEStateAndDerivative> end, double longest) {
    if (longest <= 0) {
      return;
    }
    ODEIntegrator solver = new DormandPrince853Integrator(1e-13, LONGEST_S, TOLERANCE, TOLERANCE);
    solver.addEventDetector(new Zero(end));
    ODEStateAndDerivative last =
        solver.integrate(this, new ODEState(t, new double[] {s, v}), t + longest);
    t = last.getTime();
    s = last.getPrimaryState()[0];
    v = last.getPrimaryState()[1];
  }

  private record Zero(ToDoubleFunction<ODEStateAndDerivative> value) implements ODEEventDetector {
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
      return new BracketingNthOrderBrentSolver(0, 1e-10, 0, 5);
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
