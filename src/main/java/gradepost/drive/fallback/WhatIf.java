package gradepost.drive.fallback;

import gradepost.drive.brake.FullBraking;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;
import gradepost.plan.fallback.Met;
import gradepost.policy.AdhesionCase;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;

/**
 * What a train does that is braked otherwise than planned: from another place or speed, with
 * another gauge, on another rail, or with a service brake that gives less than it was asked for.
 *
 * <p>The train comes with its brake off and its reservoirs full, and is shut off where the brake is
 * asked for. By the same models as the plan and its last places.
 */
public final class WhatIf {
  /** So often the run is looked at for the chart, s. */
  private static final double STEP_S = 1;

  /** No run is followed longer. */
  private static final int MOST_STEPS = 1200;

  /** So far behind the target the run is still shown, m. */
  private static final double BEHIND_M = 500;

  private final Assignment assignment;
  private final TrainModels bench;

  /** The train of an assignment, on its road. */
  public WhatIf(Assignment assignment) {
    this.assignment = assignment;
    this.bench = new TrainModels(assignment);
  }

  /**
   * What is tried.
   *
   * @param atM where the brake is asked for
   * @param speedMps of the train there
   * @param mainPa what the gauge is to show; full service at the most
   * @param rail on which
   * @param share of that which the service brake gives, 0 to 1
   * @param noticedS after how long it is seen that it gives less
   */
  public record Asked(
      double atM,
      double speedMps,
      double mainPa,
      AdhesionCase rail,
      double share,
      double noticedS) {
    /** Checks the share. */
    public Asked {
      if (share < 0 || share > 1 || noticedS < 0) {
        throw new IllegalArgumentException("share " + share + ", noticed " + noticedS);
      }
    }
  }

  /** A place of a run, and the speed there. */
  public record Point(double atM, double mps) {}

  /**
   * One run.
   *
   * @param points once a second, the last where it ends
   * @param met where it comes to the target's speed, or why it does so nowhere
   * @param atTargetMps at the target; the target's own where it is met in time
   */
  public record Run(List<Point> points, Met met, double atTargetMps) {
    /** Copies the list. */
    public Run {
      points = List.copyOf(points);
    }
  }

  /**
   * What another brake does from where the failure is seen, on the safe side of the plan.
   *
   * @param askedM where it is asked for
   * @param askedMps of the planned train there
   */
  public record Rescue(BrakeSystem brake, double askedM, double askedMps, Run run) {}

  /**
   * The whole answer.
   *
   * @param planned the train as planned, with what the service brake gives, to the end
   * @param safe with what it gives of full service, on the safe side of the plan: worst load,
   *     overspeed, counted share
   * @param rescues each other brake, fully on from where the failure is seen
   */
  public record Answer(Run planned, Run safe, List<Rescue> rescues) {
    /** Copies the list. */
    public Answer {
      rescues = List.copyOf(rescues);
    }
  }

  /**
   * Runs it.
   *
   * @param target that the brake is for
   */
  public Answer of(Asked asked, Target target) {
    double mainPa = Math.min(asked.mainPa(), bench.service(target).fullPa()) * asked.share();
    Stepper train = bench.plannedStepper(asked.rail());
    begin(train, asked, 0);
    Run planned = run(train, bench.service(target), mainPa, target);
    Stepper worst = bench.worstStepper(asked.rail());
    begin(worst, asked, overMps());
    TrainBrake full = worstService(target);
    Run safe = run(worst, full, full.fullPa() * asked.share(), target);
    List<Rescue> rescues = new ArrayList<>();
    for (BrakeSystem system : assignment.stock().brakes()) {
      if (system.role() != BrakeSystem.Role.SERVICE) {
        rescues.add(rescue(asked, target, mainPa, system));
      }
    }
    return new Answer(planned, safe, rescues);
  }

  private Rescue rescue(Asked asked, Target target, double mainPa, BrakeSystem system) {
    Stepper train = bench.plannedStepper(asked.rail());
    begin(train, asked, 0);
    if (mainPa > 0) {
      train.brake(bench.service(target), mainPa);
    }
    train.advance(new StopConditions().clear().time(asked.noticedS()));
    Stepper worst = bench.worstStepper(asked.rail());
    worst.place(train.timeS(), train.atM(), train.speedMps() + overMps());
    worst.chargeAs(train);
    double askedM = train.atM();
    TrainBrake rig = bench.worstRig(system, target);
    return new Rescue(system, askedM, train.speedMps(), run(worst, rig, rig.fullPa(), target));
  }

  private TrainBrake worstService(Target target) {
    BrakeSystem service =
        assignment.stock().brakes().stream()
            .filter(b -> b.role() == BrakeSystem.Role.SERVICE)
            .findFirst()
            .orElseThrow(() -> new IllegalStateException("no service brake"));
    return bench.worstRig(service, target);
  }

  private double overMps() {
    return assignment.policy().safeSide().overspeed().metresPerSecond();
  }

  private static void begin(Stepper train, Asked asked, double overMps) {
    train.place(0, asked.atM(), asked.speedMps() + overMps);
  }

  /** From where the train is, with this brake at this pressure to its end. */
  private Run run(Stepper train, TrainBrake rig, double mainPa, Target target) {
    FullBraking braking = new FullBraking(assignment.path().lengthM(), target, train, rig, mainPa);
    Met met = braking.met();
    double fromM = train.atM();
    List<Point> points = points(train, rig, mainPa, target);
    return new Run(
        points,
        met,
        met.inTime() ? target.speedMps() : speedAt(points, Math.max(target.atM(), fromM)));
  }

  private List<Point> points(Stepper train, TrainBrake rig, double mainPa, Target target) {
    List<Point> points = new ArrayList<>();
    points.add(new Point(train.atM(), train.speedMps()));
    train.brake(rig, mainPa);
    StopConditions until = new StopConditions();
    double endM = assignment.path().lengthM();
    boolean past = train.atM() >= target.atM();
    for (int i = 0; i < MOST_STEPS; i++) {
      until.clear().time(train.timeS() + STEP_S).place(past ? endM : Math.min(endM, target.atM()));
      until.speedDown(target.standsThere() ? 0 : target.speedMps());
      StopReason why = train.advance(until);
      points.add(new Point(train.atM(), train.speedMps()));
      past |= train.atM() >= target.atM();
      if (why == StopReason.SPEED_DOWN
          || why == StopReason.STANDSTILL
          || train.atM() >= endM
          || (past && train.atM() > target.atM() + BEHIND_M)) {
        break;
      }
    }
    return points;
  }

  private static double speedAt(List<Point> points, double atM) {
    return points.stream()
        .filter(p -> p.atM() >= atM - 1e-6)
        .findFirst()
        .orElse(points.get(points.size() - 1))
        .mps();
  }
}
