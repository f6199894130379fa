package gradepost.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
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
 * A train as somebody would write it who has nothing but a hand-over file: the equations of motion
 * once more, under power and brake, solved by Dormand and Prince's 8(5,3) pair of another library.
 */
public final class HandOverTrain implements OrdinaryDifferentialEquation {
  private static final double TOLERANCE = 1e-10;

  /** A place where the train is already: the solver sees no crossing there. */
  private static final double SAME_M = 1e-6;

  /** Vehicles that meet a change of gradient make kinks that longer steps overlook. */
  private static final double LONGEST_S = 0.25;

  private final double gravity;
  private final double[] massKg;
  private final double[] lengthM;
  private final double inertiaKg;
  private final double[] resistance = new double[3];
  private final double[] motoredKg;

  /** By notch: speeds and efforts, a broken line that ends at nothing. */
  private final List<double[][]> efforts = new ArrayList<>();

  private final HandOverTrack track;
  private final JsonNode brake;
  private final double[] delayS;
  private final double[] gainNPerPa;
  private final double thresholdPa;
  private final DoubleUnaryOperator friction;
  private DoubleUnaryOperator mu;
  private DoubleUnaryOperator muOnSites;

  /** Pressure of the leading cylinder: corners of a broken line. */
  private final List<double[]> corners = new ArrayList<>();

  private double t;
  private double s;
  private double v;

  /** Work of traction for each kilogram of inertia. */
  private double workJPerKg;

  /** None with power off. */
  private int notch = -1;

  /**
   * @param which {@code planned} or {@code safeSide}
   * @param brakeName its short name
   * @param adhesion the case, with what holds on low-adhesion sites where it says so
   */
  public HandOverTrain(JsonNode file, String which, String brakeName, JsonNode adhesion) {
    JsonNode train = file.at("/train/" + which);
    gravity = file.at("/track/freeFallMps2").doubleValue();
    massKg = numbers(train.get("massKg"));
    lengthM = numbers(train.get("lengthM"));
    inertiaKg = train.get("inertiaKg").doubleValue();
    motoredKg = numbers(train.get("motoredVehicleKg"));
    for (JsonNode points : train.get("effort")) {
      double[][] effort = new double[2][points.size()];
      for (int i = 0; i < points.size(); i++) {
        effort[0][i] = points.get(i).get("speedMps").doubleValue();
        effort[1][i] = points.get(i).get("effortN").doubleValue();
      }
      efforts.add(effort);
    }
    boolean helped =
        which.equals("planned")
            || file.at("/train/safeSideCountsRunningAndCurveResistance").booleanValue();
    if (helped) {
      resistance[0] = train.at("/resistance/aN").doubleValue();
      resistance[1] = train.at("/resistance/bNsPerM").doubleValue();
      resistance[2] = train.at("/resistance/cNs2PerM2").doubleValue();
    }
    brake = train.get("brakes").get(brakeName);
    delayS = delays(file, train, brakeName);
    gainNPerPa = numbers(brake.get("gainNPerPa"));
    thresholdPa = brake.get("thresholdPa").doubleValue();
    friction = friction(brake.get("blocks"));
    rail(adhesion);
    track = new HandOverTrack(file, helped);
  }

  /**
   * An application runs from the front along the pipe to each valve. Where vehicles are isolated,
   * those that are left answer as late as the hindmost of so many.
   */
  private static double[] delays(JsonNode file, JsonNode train, String brakeName) {
    double[] valves = numbers(train.get("valveM"));
    double[] gains = numbers(train.get("brakes").get(brakeName).get("gainNPerPa"));
    double speed = Double.POSITIVE_INFINITY;
    for (JsonNode system : file.at("/train/brakeSystems")) {
      if (system.get("shortName").textValue().equals(brakeName)) {
        speed = system.at("/action/speed/metresPerSecond").asDouble(speed);
      }
    }
    int next = (int) DoubleStream.of(gains).filter(gain -> gain == 0).count();
    double[] delays = new double[valves.length];
    for (int i = 0; i < valves.length; i++) {
      delays[i] = gains[i] == 0 ? 0 : valves[next++] / speed;
    }
    return delays;
  }

  /** From here on the rail is in this state. */
  public void rail(JsonNode adhesion) {
    mu = mu(adhesion.get("law"));
    muOnSites = adhesion.has("sites") ? mu(adhesion.get("sites")) : mu;
  }

  private static double[] numbers(JsonNode list) {
    double[] out = new double[list.size()];
    for (int i = 0; i < out.length; i++) {
      out[i] = list.get(i).doubleValue();
    }
    return out;
  }

  private static DoubleUnaryOperator friction(JsonNode blocks) {
    return switch (blocks.get("kind").textValue()) {
      case "ConstantBlocks" -> speed -> 1;
      case "CastIronKarwatzki" -> speed -> (3.6 * speed + 100) / (5 * 3.6 * speed + 100);
      default -> throw new AssertionError(blocks);
    };
  }

  private static DoubleUnaryOperator mu(JsonNode law) {
    return switch (law.get("kind").textValue()) {
      case "CurtiusKniffler" -> speed -> 0.161 + 7.5 / (3.6 * speed + 44);
      case "ConstantAdhesion" -> {
        double constant = law.get("coefficient").doubleValue();
        yield speed -> constant;
      }
      case "ShareOf" -> {
        double share = law.get("share").doubleValue();
        DoubleUnaryOperator dry = mu(law.get("dry"));
        yield speed -> share * dry.applyAsDouble(speed);
      }
      default -> throw new AssertionError(law);
    };
  }

  public void place(double timeS, double atM, double speedMps) {
    t = timeS;
    s = atM;
    v = speedMps;
    corners.clear();
    corners.add(new double[] {Double.NEGATIVE_INFINITY, 0});
    notch = -1;
  }

  /** Power in a notch from now on; −1 is off. */
  public void power(int to) {
    notch = to;
  }

  private double effortN(double speed) {
    if (notch < 0) {
      return 0;
    }
    double[] at = efforts.get(notch)[0];
    double[] n = efforts.get(notch)[1];
    int i = 1;
    while (i < at.length - 1 && at[i] < speed) {
      i++;
    }
    double effort = n[i - 1] + (n[i] - n[i - 1]) * (speed - at[i - 1]) / (at[i] - at[i - 1]);
    return speed > at[at.length - 1] ? n[at.length - 1] : effort;
  }

  /** Joules at the wheel rim since the train was made. */
  public double workJ() {
    return workJPerKg * inertiaKg;
  }

  /** Gains speed, less than none where the train slows. */
  public double accelerationMps2() {
    return computeDerivatives(t, new double[] {s, v, 0})[1];
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

  /** From now until the cylinders of the last vehicle are empty. */
  public double releaseS() {
    return brake.get("deadTimeS").doubleValue()
        + DoubleStream.of(delayS).max().orElse(0)
        + pressurePa() / brake.get("releasePaPerS").doubleValue();
  }

  public double fullPa() {
    return brake.get("fullPa").doubleValue();
  }

  public void brake(double pressurePa) {
    double answers = t + brake.get("deadTimeS").doubleValue();
    double now = leadingPa(answers);
    corners.removeIf(c -> c[0] >= answers);
    corners.add(new double[] {answers, now});
    double rate = brake.get(pressurePa > now ? "applyPaPerS" : "releasePaPerS").doubleValue();
    corners.add(new double[] {answers + Math.abs(pressurePa - now) / rate, pressurePa});
  }

  @Override
  public int getDimension() {
    return 3;
  }

  @Override
  public double[] computeDerivatives(double time, double[] y) {
    double speed = Math.max(0, y[1]);
    double force = -resistance[0] - speed * (resistance[1] + speed * resistance[2]);
    double rubbing = friction.applyAsDouble(speed);
    double grip = mu.applyAsDouble(speed);
    double gripOnSites = muOnSites.applyAsDouble(speed);
    double drivenN = 0;
    double front = y[0];
    double frontM = track.feltM(front);
    for (int i = 0; i < massKg.length; i++) {
      double rear = front - lengthM[i];
      double rearM = track.feltM(rear);
      double weight = massKg[i] * gravity;
      force -= weight * (frontM - rearM) / lengthM[i];
      double pressed = Math.max(0, leadingPa(time - delayS[i]) - thresholdPa);
      double own = grip + (gripOnSites - grip) * track.poorShare(rear, front);
      force -= Math.min(gainNPerPa[i] * pressed * rubbing, own * weight);
      drivenN += own * motoredKg[i] * gravity;
      front = rear;
      frontM = rearM;
    }
    double effort = Math.min(effortN(speed), drivenN);
    return new double[] {y[1], (force + effort) / inertiaKg, effort * speed / inertiaKg};
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

  public void runToPlace(double placeM) {
    if (Math.abs(placeM - s) <= SAME_M) {
      return;
    }
    run(state -> state.getPrimaryState()[0] - placeM, 3000);
  }

  /** Runs until the speed has fallen to this; zero is a stand. */
  public void runToSpeed(double speedMps) {
    if (v > speedMps) {
      run(state -> state.getPrimaryState()[1] - speedMps, 3000);
    }
  }

  /** Runs until the speed has risen to this. */
  public void runUpToSpeed(double speedMps) {
    if (v < speedMps) {
      run(state -> speedMps - state.getPrimaryState()[1], 3000);
    }
  }

  /** Runs to the first of a place, a lower or a higher speed, and a time. */
  public void runToFirst(double placeM, double downMps, double upMps, double untilS) {
    run(
        state ->
            Math.min(
                placeM - state.getPrimaryState()[0],
                Math.min(state.getPrimaryState()[1] - downMps, upMps - state.getPrimaryState()[1])),
        untilS - t);
  }

  public void runFor(double seconds) {
    run(state -> -1, seconds);
  }

  private void run(ToDoubleFunction<ODEStateAndDerivative> end, double longest) {
    if (longest <= 0) {
      return;
    }
    ODEIntegrator solver = new DormandPrince853Integrator(1e-13, LONGEST_S, TOLERANCE, TOLERANCE);
    solver.addEventDetector(new Zero(end));
    ODEStateAndDerivative last =
        solver.integrate(this, new ODEState(t, new double[] {s, v, workJPerKg}), t + longest);
    t = last.getTime();
    s = last.getPrimaryState()[0];
    v = last.getPrimaryState()[1];
    workJPerKg = last.getPrimaryState()[2];
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
