package gradepost.drive.brake;

import gradepost.motion.ForceBalance;
import gradepost.motion.LowAdhesionRail;
import gradepost.motion.Odometer;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.Stepper;
import gradepost.motion.Track;
import gradepost.motion.TrackForce;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.policy.AdhesionCase;
import gradepost.policy.SafeSide;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.stock.RunningResistance;
import gradepost.stock.Stock;
import gradepost.stock.law.AdhesionLaw;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One train on one track, set up two ways: as planned, and leaning to the safe side (worst load, no
 * help from running or curve resistance, the counted share of the brakes).
 */
public final class TrainModels {
  private static final RunningResistance NONE = new RunningResistance(0, 0, 0);

  private final Assignment assignment;
  private final PlannerSettings settings;
  private final Track track;
  private final Train planned;
  private final Train worst;
  private final PiecewiseLinear plannedForce;
  private final ForceBalance plannedBalance;
  private final PiecewiseLinear worstForce;
  private final PiecewiseLinear plannedGradient;
  private final double lightestKg;
  private final Map<AdhesionLaw, LowAdhesionRail> sites = new ConcurrentHashMap<>();
  private final Odometer odometer;
  private final TrainBrake stopping;
  private final TrainBrake slowing;
  private final Map<BrakeSystem, TrainBrake> worstStopping = new HashMap<>();
  private final Map<BrakeSystem, TrainBrake> worstSlowing = new HashMap<>();

  /** For a plan that is searched for as usual. */
  public TrainModels(Assignment assignment) {
    this(assignment, PlannerSettings.usual());
  }

  /** For one that is searched for in another way. */
  public TrainModels(Assignment assignment, PlannerSettings settings) {
    this(assignment, settings, new Odometer());
  }

  /** The same train on a part of its road; what it runs there is counted with the rest. */
  public TrainModels on(Assignment part) {
    return new TrainModels(part, settings, odometer);
  }

  private TrainModels(Assignment assignment, PlannerSettings settings, Odometer odometer) {
    this.odometer = odometer;
    this.assignment = assignment;
    this.settings = settings;
    Stock stock = assignment.stock();
    SafeSide safe = assignment.policy().safeSide();
    track = Track.of(assignment.path());
    planned = Train.of(stock, assignment.formation(), assignment.load());
    worst = Train.of(stock, assignment.formation(), safe.load());
    plannedForce = TrackForce.of(track, planned, stock.curves(), stock.checkRailDragNPerKn());
    plannedBalance = new ForceBalance(planned, assignment.policy().plannedAdhesion().law());
    worstForce = TrackForce.gradientOnly(track, worst);
    plannedGradient = TrackForce.gradientOnly(track, planned);
    lightestKg =
        Arrays.stream(LoadCase.values())
            .mapToDouble(load -> Train.of(stock, assignment.formation(), load).inertiaKg())
            .min()
            .orElseThrow();
    stopping = rig(stock.service(), assignment.load(), planned, 1, 0);
    slowing = rig(stock.service().towardsASpeed(), assignment.load(), planned, 1, 0);
    for (BrakeSystem system : stock.brakes()) {
      worstStopping.put(system, worstRig(system, safe));
      worstSlowing.put(system, worstRig(system.towardsASpeed(), safe));
    }
  }

  private TrainBrake worstRig(BrakeSystem system, SafeSide safe) {
    return rig(system, safe.load(), worst, safe.brakeFactor(), safe.isolatedShare());
  }

  private TrainBrake rig(
      BrakeSystem system, LoadCase load, Train train, double factor, double isolated) {
    return TrainBrake.of(
        assignment.stock(), assignment.formation(), load, train, system, factor, isolated);
  }

  /** The train as planned; on the low-adhesion sites with what the case says of them. */
  public Stepper plannedStepper(AdhesionCase adhesion) {
    return plannedStepper(adhesion.law(), adhesion.sites());
  }

  /** The train as planned, on another rail and on other low-adhesion sites. */
  public Stepper plannedStepper(AdhesionLaw law, Optional<AdhesionLaw> onSites) {
    return counted(
        new Stepper(planned, planned.resistance(), plannedForce, law, poorRail(onSites)));
  }

  /** The train as planned, on the rail of the plan. */
  public Stepper plannedStepper() {
    return plannedStepper(assignment.policy().plannedAdhesion());
  }

  /** The train of the worst case, which nothing but brakes and gradients slows. */
  public Stepper worstStepper(AdhesionCase adhesion) {
    return counted(
        new Stepper(worst, NONE, worstForce, adhesion.law(), poorRail(adhesion.sites())));
  }

  private Stepper counted(Stepper stepper) {
    stepper.odometer(odometer);
    return stepper;
  }

  /** Counts what all steppers of this train run. */
  public Odometer odometer() {
    return odometer;
  }

  private LowAdhesionRail poorRail(Optional<AdhesionLaw> onSites) {
    return onSites
        .map(
            law ->
                sites.computeIfAbsent(
                    law, l -> LowAdhesionRail.of(assignment.path(), assignment.lines(), l)))
        .orElseGet(LowAdhesionRail::none);
  }

  /** A brake on the safe side, used towards this target. */
  public TrainBrake worstRig(BrakeSystem system, Target target) {
    return !target.standsThere()
        ? Objects.requireNonNull(worstSlowing.get(system))
        : worstRig(system);
  }

  /** The same, used towards a stand. */
  public TrainBrake worstRig(BrakeSystem system) {
    return Objects.requireNonNull(worstStopping.get(system));
  }

  /** The service brake used towards a stand. */
  public TrainBrake service() {
    return stopping;
  }

  /** The service brake used towards a speed above zero, or to check one. */
  public TrainBrake slowing() {
    return slowing;
  }

  /** The service brake of the planned train, used towards this target. */
  public TrainBrake service(Target target) {
    return !target.standsThere() ? slowing : stopping;
  }

  /** Acceleration of the planned train in a notch (−1: off), brakes off. */
  public double accelerationMps2(int notch, double speedMps, double atM) {
    return plannedBalance.accelerationMps2(notch, speedMps, plannedForce.at(atM));
  }

  /**
   * What the steepest fall gives a train that nothing slows, m/s²: 0 where the stretch rises. It is
   * that of the load with which it is most.
   *
   * @param stepM it is looked for so often, metres
   */
  public double steepestFallMps2(double fromM, double toM, double stepM) {
    double most = 0;
    for (double at = fromM; ; at = Math.min(toM, at + stepM)) {
      most = Math.max(most, -worstForce.at(at) / worst.inertiaKg());
      most = Math.max(most, -plannedGradient.at(at) / planned.inertiaKg());
      if (at >= toM) {
        return most;
      }
    }
  }

  /** The most that a notch gives at a speed, m/s²: with the load that is lightest. */
  public double mostEffortMps2(int notch, double speedMps) {
    return plannedBalance.effortN(notch, speedMps) / lightestKg;
  }

  /** From the handle to half of the pressure in the cylinder, seconds: a check takes hold then. */
  public double takesHoldS(double pressurePa) {
    return slowing.deadTimeS() + (pressurePa + slowing.thresholdPa()) / (2 * slowing.applyPaPerS());
  }

  /** The service pressure, up to a step of the gauge, that takes so much off the planned train. */
  public double servicePressurePa(double speedMps, double decelerationMps2, double stepPa) {
    TrainBrake rig = service();
    double pressure = rig.thresholdPa() + Math.max(0, decelerationMps2) / mps2PerPa(rig, speedMps);
    return Math.ceil(pressure / stepPa - Slack.ROUNDING) * stepPa;
  }

  /** Deceleration of the planned train by a steady pressure alone, m/s². */
  public double brakedMps2(TrainBrake rig, double speedMps, double pressurePa) {
    return Math.max(0, pressurePa - rig.thresholdPa()) * mps2PerPa(rig, speedMps);
  }

  private double mps2PerPa(TrainBrake rig, double speedMps) {
    double gain = 0;
    for (double g : rig.gainNPerPa()) {
      gain += g;
    }
    return gain * rig.blocks().friction(speedMps) / planned.inertiaKg();
  }

  /** Least time in a notch before the next one is taken, seconds. */
  public double perNotchS() {
    return assignment.stock().traction().timePerNotch().seconds();
  }

  /** How the plan is searched for. */
  public PlannerSettings settings() {
    return settings;
  }

  /** The track, as this direction meets it. */
  public Track track() {
    return track;
  }

  /** The train as planned. */
  public Train plannedTrain() {
    return planned;
  }

  /** The train with the load of the worst case. */
  public Train worstTrain() {
    return worst;
  }

  /** Effort, adhesion and resistance of the planned train on the rail of the plan. */
  public ForceBalance plannedBalance() {
    return plannedBalance;
  }

  /** Gradient and curve resistance on the planned train against distance run, newtons. */
  public PiecewiseLinear plannedForce() {
    return plannedForce;
  }
}
