package gradepost.drive.fallback;

import gradepost.drive.brake.AdhesionLimitedPressure;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.BrakingRun;
import gradepost.drive.brake.LastPlace;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.ReductionMonitor;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.Solver;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.Places;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import gradepost.policy.AdhesionCase;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the brake goes on in another state of the rail than the planned one, on the run that comes
 * to the target there. It is never later than planned, and early and light enough for the adhesion
 * of every axle. The result is the printed technique at the printed place: carried out so, it meets
 * the target, and a stop is within its tolerance.
 */
final class PlannedPoints {
  /** Up a terminal platform a train is not braked to less than this share of a step's speed. */
  private static final double ROLLS_ON_SHARE = 0.6;

  private final Assignment assignment;
  private final TrainModels bench;
  private final Places places;
  private final PlannerSettings settings;
  private final List<Target> steps;
  private final StopConditions until = new StopConditions();

  /**
   * @param targets of the whole run: the steps up a terminal platform are kept on the way to the
   *     next; another lower speed has a page of its own, for whoever comes too fast to it
   */
  PlannedPoints(Assignment assignment, TrainModels bench, Places places, List<Target> targets) {
    this.assignment = assignment;
    this.bench = bench;
    this.places = places;
    this.steps = targets.stream().filter(Target::isTerminalStep).toList();
    this.settings = bench.settings();
  }

  /** The plan's own point. */
  PlannedPoint planned(ApproachSolution piece, int approach) {
    Braking nominal = Braking.of(assignment, bench, piece.target());
    if (!piece.found() || piece.brakingM().isEmpty()) {
      return PlannedPoint.none(nominal);
    }
    Rail rail = new Rail(piece, bench.plannedStepper(), bench.plannedStepper(), Optional.empty());
    return rail.point(piece.brakingM().get(), nominal, piece.braking().orElse(nominal), approach);
  }

  /**
   * @param piece with the run that comes to the target on this rail
   * @param planned what that run is picked up with
   * @param rollOn how the plan goes on from there; the next steps up a platform are then met too,
   *     if need be by letting go at a lower speed
   * @param approach the number of what is done
   */
  PlannedPoint in(
      AdhesionCase adhesion,
      ApproachSolution piece,
      Stepper planned,
      Optional<RollOn> rollOn,
      int approach) {
    Braking usual = Braking.of(assignment, bench, piece.target());
    Rail rail = new Rail(piece, planned, bench.plannedStepper(adhesion), rollOn);
    if (rollOn.isPresent()) {
      for (Braking down : letGoLower(piece.target(), rollOn.get())) {
        PlannedPoint point = in(adhesion, rail, down, approach);
        if (point.atM().isPresent()) {
          return point;
        }
      }
      rail = new Rail(piece, planned, bench.plannedStepper(adhesion), Optional.empty());
    }
    return in(adhesion, rail, usual, approach);
  }

  /** Techniques that let go where the plan does and lower; where none does, those above it. */
  private List<Braking> letGoLower(Target target, RollOn rollOn) {
    double unit = assignment.path().units().speedUnitMps();
    List<Braking> all = new ArrayList<>();
    for (double mps = rollOn.releaseMps(); mps > 0; mps -= unit) {
      Braking down = Braking.downTo(assignment, bench, target, mps);
      if (!all.isEmpty() && down.aimMps() >= all.get(all.size() - 1).aimMps()) {
        break;
      }
      all.add(down);
    }
    List<Braking> low =
        all.stream()
            .filter(b -> b.releases())
            .filter(b -> b.releasedAtMps() <= rollOn.releaseMps() + Slack.SPEED_MPS)
            .toList();
    return low.isEmpty() ? all : low;
  }

  private PlannedPoint in(AdhesionCase adhesion, Rail rail, Braking nominal, int approach) {
    AdhesionLimitedPressure carried = new AdhesionLimitedPressure(assignment, bench, adhesion);
    ApproachSolution piece = rail.piece;
    double from = piece.brakingM().orElse(piece.target().aimM(assignment.policy().margins()));
    PlannedPoint point = PlannedPoint.none(nominal);
    for (int round = 0; round < settings.fallback().rounds(); round++) {
      Limit limit =
          new Limit(
              carried,
              settings.fallback().samePa(),
              rail.fastest(from),
              from,
              piece.target().atM());
      if (round > 0 && stands(point, rail, limit, nominal)) {
        return point;
      }
      point = point(rail, limit, nominal, approach);
      if (point.atM().isEmpty() || point.atM().get() >= from) {
        return point;
      }
      from = point.atM().get();
    }
    return point;
  }

  /** Whether what was found by another limit would be found by this one too. */
  private static boolean stands(PlannedPoint point, Rail rail, Limit limit, Braking nominal) {
    Braking light = limit.lighter(nominal);
    Braking found = point.nominal();
    return light.mainPa() == found.mainPa()
        && light.firstPa() == found.firstPa()
        && Arrays.equals(light.easePa(), found.easePa())
        && rail.carried(limit, point.braking().orElseThrow(), point.atM().orElseThrow());
  }

  /** The pressure that the adhesion allows from a place on, at a speed there. */
  private record Limit(
      AdhesionLimitedPressure carried, double samePa, double mps, double fromM, double toM) {
    Braking lighter(Braking braking) {
      return carried.lighter(braking, mps, fromM, toM);
    }

    /** Whether a pressure is not too much from one speed down to another. */
    boolean carries(TrainBrake rig, double pa, double fasterMps, double slowerMps) {
      return pa <= carried.mostPa(rig, fasterMps, slowerMps, fromM, toM) + samePa;
    }
  }

  private PlannedPoint point(Rail rail, Limit limit, Braking nominal, int approach) {
    ApproachSolution piece = rail.piece;
    Braking light = limit.lighter(nominal);
    Optional<RailLine> braked =
        piece.line() instanceof RailLine line ? Optional.of(line) : Optional.empty();
    double low = braked.map(RailLine::brakedM).orElseGet(piece.line()::startM);
    double toleranceM = settings.fallback().toleranceM();
    double aimM = piece.target().aimM(assignment.policy().margins());
    double latestM = Math.min(aimM, piece.brakingM().orElse(aimM));
    double high = Math.max(low, latestM);
    OptionalDouble last =
        new LastPlace(settings.brake(), low, high, toleranceM).of(x -> rail.shortM(light, x));
    if (last.isEmpty()) {
      return PlannedPoint.none(light);
    }
    double latest = last.getAsDouble();
    Grid usual = x -> places.onGrid(x, piece.target());
    Grid fine = x -> places.toTheUnit(x, piece.target());
    Optional<PlannedPoint> crawls = Optional.empty();
    for (Grid grid : List.of(usual, fine)) {
      double at = grid.atOrBefore(latest);
      for (int i = 0; i < settings.fallback().places() && at >= low; i++) {
        for (Braking meets : rail.meeting(limit, light, at)) {
          PlannedPoint found = rail.point(at, light, meets, approach);
          if (!piece.target().isTerminalStep() || rail.rollsOn(meets, at)) {
            return found;
          }
          crawls = crawls.or(() -> Optional.of(found));
        }
        at = grid.atOrBefore(at - 2 * toleranceM);
      }
    }
    return crawls.orElseGet(() -> PlannedPoint.none(light));
  }

  /** Places that can be printed. */
  private interface Grid {
    double atOrBefore(double exactM);
  }

  /** The run of one piece on one rail, tried out. */
  private final class Rail {
    private final ApproachSolution piece;
    private final Stepper planned;
    private final Stepper stepper;
    private final Optional<RollOn> rollOn;

    Rail(ApproachSolution piece, Stepper planned, Stepper stepper, Optional<RollOn> rollOn) {
      this.piece = piece;
      this.planned = planned;
      this.stepper = stepper;
      this.rollOn = rollOn;
    }

    /** The highest speed that the planned braking, or one from this place, begins at. */
    double fastest(double atM) {
      piece.line().pickUp(planned, atM);
      return Math.max(piece.brakingMps(), planned.speedMps());
    }

    /** Where the run is at a place, with the brake that is on there and no power. */
    private Snapshot at(double atM) {
      piece.line().pickUpBraked(planned, atM);
      stepper.restore(planned.save());
      stepper.shutOff();
      return stepper.save();
    }

    double shortM(Braking braking, double atM) {
      at(atM);
      return braking.run(stepper).shortOf(piece.target().aimM(assignment.policy().margins()));
    }

    Braking solved(Braking light, double atM) {
      boolean stop = piece.target().standsThere();
      Snapshot there = at(atM);
      return new Solver(assignment, settings.brake())
          .forPlace(
              light, stepper, there, piece.target().aimM(assignment.policy().margins()), stop);
    }

    /**
     * The planned technique, and one solved for the place, as this rail carries them. None where
     * the train, braked before, stands already. Up a terminal platform the second may be wanted
     * where the first meets the step too; else it is not looked for then.
     */
    List<Braking> meeting(Limit limit, Braking light, double atM) {
      List<Braking> out = new ArrayList<>();
      if (at(atM).speedMps() <= Slack.SPEED_MPS) {
        return out;
      }
      piece
          .braking()
          .map(limit::lighter)
          .filter(b -> carried(limit, b, atM) && meets(b, atM))
          .ifPresent(out::add);
      if (out.isEmpty() || piece.target().isTerminalStep()) {
        Optional.of(solved(light, atM))
            .filter(b -> carried(limit, b, atM) && meets(b, atM))
            .ifPresent(out::add);
      }
      return out;
    }

    /**
     * Whether no pressure is too much for the rail as long as it is on. The first one may stay on
     * below the speed of an ease; what is on already is not asked for here.
     */
    boolean carried(Limit limit, Braking braking, double atM) {
      at(atM);
      double beforePa = stepper.demandPa();
      List<Snapshot> asked = new ArrayList<>();
      Trigger start = new Trigger.AtPlace(atM);
      new BrakingRun(braking, stepper, start, (by, command) -> asked.add(stepper.save())).run();
      asked.add(stepper.save());
      boolean all = true;
      for (int i = 0; i + 1 < asked.size(); i++) {
        double pa = asked.get(i).demandPa();
        double fasterMps = asked.get(i).speedMps();
        double slowerMps = asked.get(i + 1).speedMps();
        all &= pa <= beforePa || limit.carries(braking.rig(), pa, fasterMps, slowerMps);
      }
      return all;
    }

    /** Whether it keeps the lower speeds on its way to the target, up to the place and behind. */
    private boolean keeps(Braking braking, double atM) {
      List<Target> passed = lower(piece.line().startM(), atM);
      List<Target> ahead = lower(atM, piece.target().atM() - Slack.PLACE_M);
      return passed.stream().allMatch(t -> at(t.atM()).speedMps() <= t.speedMps() + Slack.SPEED_MPS)
          && (ahead.isEmpty() || keeps(ahead, braking, atM));
    }

    private List<Target> lower(double fromM, double toM) {
      return steps.stream().filter(t -> t.atM() > fromM && t.atM() <= toM).toList();
    }

    private boolean keeps(List<Target> ahead, Braking braking, double atM) {
      at(atM);
      ReductionMonitor monitor = new ReductionMonitor(ahead);
      stepper.record(monitor);
      braking.run(stepper);
      stepper.advance(until.clear().place(piece.target().atM()));
      stepper.record(null);
      return monitor.marginM() >= -Slack.SPEED_MPS;
    }

    /** Whether it comes to the target as it should: no further, and no shorter than a stop may. */
    boolean meets(Braking braking, double atM) {
      if (!keeps(braking, atM)) {
        return false;
      }
      double shortM = shortM(braking, atM);
      Target target = piece.target();
      if (shortM < 0) {
        return false;
      }
      if (target.standsThere()) {
        return shortM <= assignment.policy().margins().stopTolerance().metres();
      }
      StopReason ended = stepper.advance(until.clear().place(target.atM()));
      return ended == StopReason.PLACE
          && stepper.speedMps() <= target.speedMps() + Slack.SPEED_MPS
          && rollsOnSlowly();
    }

    /** Whether it comes slowly enough to the next steps, from where the stepper is. */
    private boolean rollsOnSlowly() {
      for (Target next : lower(piece.target().atM(), rollOn.map(RollOn::untilM).orElse(0.0))) {
        StopReason ended = stepper.advance(until.clear().place(next.atM()));
        if (ended != StopReason.PLACE) {
          return true;
        }
        if (stepper.speedMps() > next.speedMps() + Slack.SPEED_MPS) {
          return false;
        }
      }
      return true;
    }

    /**
     * Whether a train that was braked for a step up a platform still rolls there: one that crawls
     * stands before the mark.
     */
    boolean rollsOn(Braking braking, double atM) {
      shortM(braking, atM);
      StopReason ended = stepper.advance(until.clear().place(piece.target().atM()));
      return ended == StopReason.PLACE
          && stepper.speedMps() >= ROLLS_ON_SHARE * piece.target().speedMps();
    }

    PlannedPoint point(double atM, Braking nominal, Braking braking, int approach) {
      at(atM);
      List<Action> actions = new ArrayList<>();
      if (planned.notch() >= 0) {
        actions.add(action(approach, new Trigger.AtPlace(atM), new Command.ShutOff()));
      }
      new BrakingRun(
              braking,
              stepper,
              new Trigger.AtPlace(atM),
              (by, command) -> actions.add(action(approach, by, command)))
          .run();
      return new PlannedPoint(
          Optional.of(atM), braking.mainPa(), nominal, Optional.of(braking), actions);
    }

    private Action action(int approach, Trigger by, Command command) {
      return new Action(approach, by, command, stepper.atM(), stepper.speedMps(), stepper.timeS());
    }
  }
}
