package gradepost.drive.check;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.HeldSpeed;
import gradepost.drive.brake.HoldLimits;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.Solver;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.PlanFailure;
import gradepost.plan.PlanFailure.NotHeld;
import gradepost.plan.PlanFailure.NotHeld.Why;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Judges the speeds that a run is told to hold. A driver who holds a speed may be anywhere in the
 * band where that ends, so the run goes on from both edges of it: up to the next braking point, at
 * which the train must not be too late. How the hold was found is not known here.
 */
public final class HeldSpeeds {
  /**
   * So far may the speed drop below the lower one before power takes it up again, m/s: about 2 mph.
   */
  private static final double DROPS_MPS = 0.9;

  private final Assignment assignment;
  private final TrainModels models;
  private final Ceiling ceiling;
  private final HoldLimits limits;
  private final Solver solver;
  private final StopConditions until = new StopConditions();

  /** For a train and its track. */
  public HeldSpeeds(Assignment assignment, TrainModels models, Ceiling ceiling) {
    this.assignment = assignment;
    this.models = models;
    this.ceiling = ceiling;
    this.limits = new HoldLimits(assignment, models);
    this.solver = new Solver(assignment, models.settings().brake());
  }

  /**
   * What is wrong with them; empty where nothing is.
   *
   * @param startM where the run begins from a stand, distance run
   * @param numbers the approach that each target belongs to
   */
  public List<PlanFailure> failures(
      double startM, List<Instruction> instructions, Map<Target, Integer> numbers) {
    List<PlanFailure> failures = new ArrayList<>();
    if (instructions.stream().allMatch(i -> i.command().hold().isEmpty())) {
      return failures;
    }
    InstructionRun run = new InstructionRun(assignment, models, ceiling);
    run.startAt(startM);
    int done = 0;
    for (int i = 0; i < instructions.size(); i++) {
      Optional<Command.Hold> hold = instructions.get(i).command().hold();
      if (hold.isEmpty()) {
        continue;
      }
      int until = i + 1;
      boolean came = run.follow(instructions.subList(done, until), numbers);
      if (run.actions().size() == until) {
        double fromM = run.actions().get(i).atM();
        failures.addAll(band(hold.get(), fromM, run.points()));
      }
      if (!came) {
        return failures;
      }
      for (double edgeMps : new double[] {hold.get().upperMps(), hold.get().lowerMps()}) {
        failures.addAll(
            edge(run.joint().train(), edgeMps, instructions.subList(until, instructions.size())));
      }
      done = until;
    }
    return failures;
  }

  private List<PlanFailure> band(Command.Hold hold, double fromM, List<Trace.Point> points) {
    List<PlanFailure> failures = new ArrayList<>();
    double topMps = limits.topMps(hold, fromM, ceiling.lowest(fromM, hold.untilM()));
    if (hold.upperMps() > topMps + Slack.SPEED_MPS) {
      failures.add(new NotHeld(fromM, Why.TOP, hold.upperMps(), topMps));
    }
    boolean braked = hold.by().match(notch -> false, brake -> true);
    if (braked && !models.service().gradualRelease()) {
      failures.add(new NotHeld(fromM, Why.FULL_RELEASE, hold.upperMps(), 0));
    }
    double highMps = hold.upperMps() + limits.gainedMps(hold, fromM);
    double lowMps = hold.lowerMps() - DROPS_MPS;
    points.stream()
        .filter(p -> p.atM() > fromM && p.atM() <= hold.untilM())
        .filter(p -> p.speedMps() > highMps + Slack.SPEED_MPS || p.speedMps() < lowMps)
        .findFirst()
        .map(
            p ->
                new NotHeld(
                    p.atM(),
                    Why.LEFT,
                    p.speedMps(),
                    p.speedMps() > highMps ? hold.upperMps() : hold.lowerMps()))
        .ifPresent(failures::add);
    return failures;
  }

  /** Goes on from an edge, all off, up to the next braking point, and judges it there. */
  private List<PlanFailure> edge(Snapshot end, double edgeMps, List<Instruction> then) {
    List<PlanFailure> failures = new ArrayList<>();
    Stepper stepper = models.plannedStepper();
    stepper.place(end.timeS(), end.atM(), edgeMps);
    double pointM =
        then.stream()
            .filter(i -> i.command().brakesForTarget())
            .flatMap(i -> i.trigger().place().stream())
            .mapToDouble(Trigger.AtPlace::atM)
            .findFirst()
            .orElse(Double.POSITIVE_INFINITY);
    double slackMps = models.settings().check().speedSlackMps();
    stepper.record(
        (t, s, v, p, n) -> {
          double mayMps = ceiling.speedAt(s);
          if (failures.isEmpty() && v > mayMps + slackMps) {
            failures.add(new PlanFailure.OverCeiling(s, v, mayMps));
          }
        });
    for (Instruction next : then) {
      boolean braking = next.command().brakesForTarget();
      double lastS = stepper.timeS();
      boolean came = await(next.trigger(), stepper, lastS, pointM);
      if (stepper.speedMps() == 0 && !next.command().isStand()) {
        failures.add(new PlanFailure.NeverComes(stepper.atM(), next.trigger()));
        return failures;
      }
      if (braking) {
        stepper.record(null);
        double atM = stepper.atM();
        double mps = stepper.speedMps();
        if (came && failures.isEmpty() && !inTime(next.target(), stepper)) {
          failures.add(new NotHeld(atM, Why.EDGE, mps, ceiling.speedAt(atM)));
        }
        return failures;
      }
      if (!came) {
        // What is told next does not come before the brake: it is off there.
        if (stepper.atM() < pointM - Slack.PLACE_M) {
          return failures;
        }
        continue;
      }
      carryOut(next.command(), stepper, pointM);
    }
    return failures;
  }

  /** Whether it comes, and comes before the braking point. */
  private boolean await(Trigger trigger, Stepper stepper, double lastS, double pointM) {
    until.clear();
    if (pointM < Double.POSITIVE_INFINITY) {
      until.place(pointM);
    }
    StopReason wanted =
        trigger.match(
            place -> {
              until.place(Math.min(pointM, place.atM()));
              return place.atM() <= pointM ? StopReason.PLACE : StopReason.NEVER;
            },
            up -> {
              until.speedUp(up.speedMps());
              return StopReason.SPEED_UP;
            },
            down -> {
              until.speedDown(down.speedMps());
              return StopReason.SPEED_DOWN;
            },
            after -> {
              until.time(lastS + after.seconds());
              return StopReason.TIME;
            },
            start -> StopReason.STANDSTILL,
            stand -> StopReason.STANDSTILL);
    return stepper.advance(until) == wanted;
  }

  private void carryOut(Command command, Stepper stepper, double pointM) {
    command.act(
        power -> powerOn(power.notch(), stepper),
        off -> stepper.shutOff(),
        brake -> stepper.brake(models.slowing(), brake.pressurePa()),
        release -> stepper.brake(models.slowing(), 0),
        stand -> {},
        hold -> {
          HeldSpeed held = new HeldSpeed(hold, models, stepper, (trigger, did) -> {});
          held.run(pointM);
          held.end();
        });
  }

  /** One notch after the other, from whatever the handle is in. */
  private void powerOn(int notch, Stepper stepper) {
    while (stepper.notch() < notch) {
      stepper.power(stepper.notch() + 1);
      if (stepper.notch() < notch) {
        stepper.advance(until.clear().time(stepper.timeS() + models.perNotchS()));
      }
    }
  }

  /** Whether the policy's technique, from where the train is, still meets its target. */
  private boolean inTime(Target target, Stepper stepper) {
    stepper.shutOff();
    Snapshot point = stepper.save();
    double aimM = target.aimM(assignment.policy().margins());
    Braking usual = Braking.of(assignment, models, target);
    Braking solved = solver.forPlace(usual, stepper, point, aimM, target.standsThere());
    stepper.restore(point);
    return solved.run(stepper).shortOf(aimM) >= 0;
  }
}
