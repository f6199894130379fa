package gradepost.drive.brake;

import gradepost.motion.LowAdhesionRail;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.policy.AdhesionCase;
import gradepost.route.Stretch;
import gradepost.task.Assignment;
import gradepost.units.Exact;
import java.util.List;

/** How much brake one state of the rail carries on every axle, where a braking passes. */
public final class AdhesionLimitedPressure {
  private final Assignment assignment;
  private final int parts;
  private final Train train;
  private final AdhesionCase adhesion;
  private final List<Stretch> sites;

  public AdhesionLimitedPressure(Assignment assignment, TrainModels bench, AdhesionCase adhesion) {
    this.assignment = assignment;
    this.parts = bench.settings().brake().adhesionParts();
    this.train = bench.plannedTrain();
    this.adhesion = adhesion;
    this.sites =
        adhesion.sites().isPresent()
            ? LowAdhesionRail.stretches(assignment.path(), assignment.lines())
            : List.of();
  }

  /**
   * The same technique with no more pressure in any stage than what is carried there by all rail
   * that the train stands on from here on.
   */
  public Braking lighter(Braking braking, double fromMps, double fromM, double toM) {
    double[] at = braking.easeAtMps();
    double[] to = braking.easePa().clone();
    double down = braking.mainDownToMps(fromMps);
    double mainPa = Math.min(braking.mainPa(), mostPa(braking.rig(), fromMps, down, fromM, toM));
    for (int i = 0; i < to.length; i++) {
      if (to[i] > 0) {
        double next = i + 1 < at.length ? at[i + 1] : braking.aimMps();
        to[i] = Math.min(to[i], mostPa(braking.rig(), at[i], next, fromM, toM));
      }
    }
    return braking.withMain(mainPa).withEases(to);
  }

  /**
   * What is carried between two speeds, down to a step of the gauge or of the handle.
   *
   * @param fromM where the front is when the brake goes on, up to {@code toM}, metres run
   */
  public double mostPa(TrainBrake rig, double fromMps, double toMps, double fromM, double toM) {
    double most = rig.fullPa();
    for (int i = 0; i <= parts; i++) {
      double mps = toMps + (Math.max(fromMps, toMps) - toMps) * i / parts;
      double mu = mu(mps, fromM, toM);
      double friction = rig.blocks().friction(mps);
      for (int k = 0; k < rig.gainNPerPa().length; k++) {
        double perPa = rig.gainNPerPa()[k] * friction;
        if (perPa > 0) {
          double carriedN = mu * train.massKg()[k] * Exact.G;
          most = Math.min(most, rig.thresholdPa() + carriedN / perPa);
        }
      }
    }
    return Pressures.atMost(
        assignment.stock().service(), most, assignment.route().units().pressureStepPa());
  }

  private double mu(double mps, double fromM, double toM) {
    double mu = adhesion.law().mu(mps);
    double rear = fromM - train.totalLengthM();
    boolean onSite = sites.stream().anyMatch(s -> s.fromM() < toM && s.toM() > rear);
    return onSite ? Math.min(mu, adhesion.sites().map(law -> law.mu(mps)).orElse(mu)) : mu;
  }
}
