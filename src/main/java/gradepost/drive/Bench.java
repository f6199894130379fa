package gradepost.drive;

import gradepost.motion.BrakeRig;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.PoorRail;
import gradepost.motion.Stepper;
import gradepost.motion.Track;
import gradepost.motion.TrackForce;
import gradepost.motion.Train;
import gradepost.stock.AdhesionLaw;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.stock.RunningResistance;
import gradepost.stock.Stock;
import gradepost.units.Exact;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One train on one track, set up two ways: as planned, and leaning to the safe side (worst load, no
 * help from running or curve resistance, the counted share of the brakes).
 */
final class Bench {
  private static final RunningResistance NONE = new RunningResistance(0, 0, 0);

  private final Assignment assignment;
  private final Track track;
  private final Train planned;
  private final Train worst;
  private final PiecewiseLinear plannedForce;
  private final PiecewiseLinear worstForce;
  private final Map<AdhesionLaw, PoorRail> sites = new ConcurrentHashMap<>();
  private final BrakeRig stopping;
  private final BrakeRig slowing;
  private final Map<BrakeSystem, BrakeRig> worstStopping = new HashMap<>();
  private final Map<BrakeSystem, BrakeRig> worstSlowing = new HashMap<>();

  Bench(Assignment assignment) {
    this.assignment = assignment;
    Stock stock = assignment.stock();
    SafeSide safe = assignment.policy().safeSide();
    track = Track.of(assignment.path());
    planned = Train.of(stock, assignment.formation(), assignment.load());
    worst = Train.of(stock, assignment.formation(), safe.load());
    plannedForce = TrackForce.of(track, planned, stock.curves(), stock.checkRailDragNPerKn());
    worstForce = TrackForce.gradientOnly(track, worst);
    stopping = rig(stock.service(), assignment.load(), planned, 1, 0);
    slowing = rig(stock.service().towardsASpeed(), assignment.load(), planned, 1, 0);
    for (BrakeSystem system : stock.brakes()) {
      worstStopping.put(system, worstRig(system, safe));
      worstSlowing.put(system, worstRig(system.towardsASpeed(), safe));
    }
  }

  private BrakeRig worstRig(BrakeSystem system, SafeSide safe) {
    return rig(system, safe.load(), worst, safe.brakeFactor(), safe.isolatedShare());
  }

  private BrakeRig rig(
      BrakeSystem system, LoadCase load, Train train, double factor, double isolated) {
    return BrakeRig.of(
        assignment.stock(), assignment.formation(), load, train, system, factor, isolated);
  }

  /** The train as planned; on the low-adhesion sites with what the case says of them. */
  Stepper plannedStepper(AdhesionCase adhesion) {
    return plannedStepper(adhesion.law(), adhesion.sites());
  }

  Stepper plannedStepper(AdhesionLaw law, Optional<AdhesionLaw> onSites) {
    return new Stepper(planned, planned.resistance(), plannedForce, law, poorRail(onSites));
  }

  Stepper plannedStepper() {
    return plannedStepper(assignment.policy().plannedAdhesion());
  }

  Stepper worstStepper(AdhesionCase adhesion) {
    return new Stepper(worst, NONE, worstForce, adhesion.law(), poorRail(adhesion.sites()));
  }

  private PoorRail poorRail(Optional<AdhesionLaw> onSites) {
    return onSites
        .map(
            law ->
                sites.computeIfAbsent(
                    law, l -> PoorRail.of(assignment.path(), assignment.lines(), l)))
        .orElseGet(PoorRail::none);
  }

  /** A brake on the safe side, used towards this target. */
  BrakeRig worstRig(BrakeSystem system, Target target) {
    return !target.standsThere()
        ? Objects.requireNonNull(worstSlowing.get(system))
        : worstRig(system);
  }

  /** The same, used towards a stand. */
  BrakeRig worstRig(BrakeSystem system) {
    return Objects.requireNonNull(worstStopping.get(system));
  }

  /** The service brake used towards a stand. */
  BrakeRig service() {
    return stopping;
  }

  /** The service brake used towards a speed above zero, or to check one. */
  BrakeRig slowing() {
    return slowing;
  }

  BrakeRig service(Target target) {
    return !target.standsThere() ? slowing : stopping;
  }

  /** Acceleration of the planned train in a notch (−1: off), brakes off. */
  double accelerationMps2(int notch, double speedMps, double atM) {
    double force = 0;
    if (notch >= 0) {
      double grip =
          assignment.policy().plannedAdhesion().law().mu(speedMps) * planned.motoredKg() * Exact.G;
      force = Math.min(planned.effort().get(notch).at(speedMps), grip);
    }
    force -= planned.resistance().atN(speedMps) + plannedForce.at(atM);
    return force / planned.inertiaKg();
  }

  /** The service pressure, up to a step of the gauge, that takes so much off the planned train. */
  double servicePressurePa(double speedMps, double decelerationMps2, double stepPa) {
    BrakeRig rig = service();
    double pressure = rig.thresholdPa() + Math.max(0, decelerationMps2) / mps2PerPa(rig, speedMps);
    return Math.ceil(pressure / stepPa - 1e-9) * stepPa;
  }

  /** Deceleration of the planned train by a steady pressure alone, m/s². */
  double brakedMps2(BrakeRig rig, double speedMps, double pressurePa) {
    return Math.max(0, pressurePa - rig.thresholdPa()) * mps2PerPa(rig, speedMps);
  }

  private double mps2PerPa(BrakeRig rig, double speedMps) {
    double gain = 0;
    for (double g : rig.gainNPerPa()) {
      gain += g;
    }
    return gain * rig.blocks().friction(speedMps) / planned.inertiaKg();
  }

  Track track() {
    return track;
  }

  Train plannedTrain() {
    return planned;
  }

  Train worstTrain() {
    return worst;
  }

  PiecewiseLinear plannedForce() {
    return plannedForce;
  }
}
