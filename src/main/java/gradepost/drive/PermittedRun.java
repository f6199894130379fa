package gradepost.drive;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.BrakingRun;
import gradepost.drive.brake.LastPlace;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.Solver;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.Places;
import gradepost.drive.leg.ApproachSolution;
import gradepost.drive.leg.SpeedProfile;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.Action;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.units.Rounding;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The run to a lower speed of a train that is as fast as it may be: full power from the last stand,
 * held at the permissible speed where it comes to that. No train of this load can be faster, so
 * that a point found on this run is early enough for all of them.
 */
final class PermittedRun {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final Places places;
  private final PlannerSettings settings;

  /** By where they begin. */
  private final Map<Double, FromStand> known = new ConcurrentHashMap<>();

  PermittedRun(Assignment assignment, TrainModels bench, Ceiling ceiling, Places places) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.places = places;
    this.settings = bench.settings();
  }

  /**
   * @param piece braked for the same target as the one it is asked for; empty where no train is
   *     seen to be too fast for it, or no place is early enough
   * @param nowhere whether no place is
   */
  record Braked(Optional<ApproachSolution> piece, boolean nowhere) {
    private static final Braked NOT = new Braked(Optional.empty(), false);
  }

  Braked to(ApproachSolution unbraked) {
    Target target = unbraked.target();
    Braking braking = Braking.of(assignment, bench, target);
    RunStates line = line(unbraked.line().startM(), target.atM());
    Stepper stepper = bench.plannedStepper();
    double low = line.startM();
    double high = target.aimM(assignment.policy().margins());
    line.pickUp(stepper, target.atM());
    long over = printed(stepper.speedMps()) - printed(target.speedMps());
    if (over <= 0 || high <= low) {
      return Braked.NOT;
    }
    OptionalDouble last =
        new LastPlace(settings.brake(), low, high, settings.fallback().toleranceM())
            .of(x -> shortM(line, stepper, braking, x, high));
    if (last.isEmpty()) {
      return new Braked(Optional.empty(), true);
    }
    double exact = last.getAsDouble();
    double point = Math.max(low, places.printed(exact, target, low));
    line.pickUp(stepper, point);
    Snapshot there = stepper.save();
    if (over == 1 && printed(there.speedMps()) <= printed(target.speedMps())) {
      // A brake told for one mph, at a speed that the board allows, would only alarm.
      return Braked.NOT;
    }
    Braking solved =
        new Solver(assignment, settings.brake()).forPlace(braking, stepper, there, high, false);
    stepper.restore(there);
    List<Instruction> told = new ArrayList<>();
    Braking.Outcome outcome = solved.run(stepper, new Trigger.AtPlace(point), target, told);
    if (told.isEmpty()) {
      return Braked.NOT;
    }
    ApproachSolution piece =
        new ApproachSolution(
            target,
            unbraked.fromM(),
            Optional.empty(),
            Optional.of(exact),
            Optional.of(point),
            there.speedMps(),
            Optional.of(solved),
            line,
            told,
            outcome.endM(),
            outcome.held());
    return new Braked(Optional.of(piece), false);
  }

  /** In whole units, as on a board and a speedometer. */
  private long printed(double mps) {
    return assignment.path().units().speedNumber(mps, Rounding.DOWN);
  }

  /** The speed of such a run where the lower speed of this piece begins. */
  double mostMps(ApproachSolution unbraked) {
    Stepper stepper = bench.plannedStepper();
    double at = unbraked.target().atM();
    line(unbraked.line().startM(), at).pickUp(stepper, at);
    return stepper.speedMps();
  }

  /** What is done on a piece of such a run, and where. */
  List<Action> actions(ApproachSolution piece, int approach) {
    Stepper stepper = bench.plannedStepper();
    piece.line().pickUp(stepper, piece.brakingM().orElseThrow());
    List<Action> out = new ArrayList<>();
    Trigger here = new Trigger.AtPlace(stepper.atM());
    new BrakingRun(
            piece.braking().orElseThrow(),
            stepper,
            here,
            (by, command) ->
                out.add(
                    new Action(
                        approach, by, command, stepper.atM(), stepper.speedMps(), stepper.timeS())))
        .run();
    return out;
  }

  private static double shortM(
      RunStates line, Stepper stepper, Braking braking, double atM, double aimM) {
    line.pickUp(stepper, atM);
    Braking.Outcome outcome = braking.run(stepper);
    return outcome.shortOf(aimM);
  }

  private RunStates line(double startM, double toM) {
    return known.computeIfAbsent(startM, FromStand::new).upTo(toM);
  }

  /**
   * The run from one stand, in steps, as far as it was ever asked for: to the last of many targets
   * it is worked out once. May be asked by many threads at once.
   */
  private final class FromStand {
    private final Stepper stepper = bench.plannedStepper();
    private final StopConditions until = new StopConditions();
    private final SpeedProfile steps = new SpeedProfile();
    private boolean stalled;

    FromStand(double startM) {
      stepper.place(0, startM, 0);
      steps.addHeld(stepper);
    }

    synchronized RunStates upTo(double toM) {
      double stepM = settings.fallback().permittedStepM();
      while (!stalled && stepper.atM() + stepM <= toM) {
        stalled = !gets(stepper, stepper.atM() + stepM, steps);
      }
      SpeedProfile line = steps.upTo(toM);
      if (line.endM() < toM && toM < line.endM() + stepM) {
        Stepper rest = bench.plannedStepper();
        rest.restore(line.state(line.size() - 1));
        gets(rest, toM, line);
      }
      return line;
    }

    /** Whether the train comes to a place, as fast as it may be. */
    private boolean gets(Stepper from, double toM, SpeedProfile line) {
      from.power(assignment.stock().traction().notches().size() - 1);
      from.advance(until.clear().place(toM).time(from.timeS() + 600));
      if (from.atM() < toM - Slack.PLACE_M) {
        return false;
      }
      from.place(from.timeS(), toM, Math.min(from.speedMps(), before(toM)));
      line.addHeld(from);
      return true;
    }
  }

  /** What is permissible up to a place; a lower speed that begins there is not yet kept. */
  private double before(double atM) {
    return ceiling.speedAt(atM - Slack.PLACE_M);
  }
}
