package gradepost.drive.leg;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.Solver;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.drive.grid.GuideDependencies;
import gradepost.drive.grid.Places;
import gradepost.motion.NoEnd;
import gradepost.motion.Recorder;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Works out the run from one stop to the next: under the driver's rules until the first place where
 * something ahead must be braked for, then that braking, and on from there.
 */
public final class LegPlanner {
  private final Assignment assignment;
  private final TrainModels bench;
  private final DriverRules rules;
  private final Places places;
  private final Solver solver;
  private final Stepper stepper;
  private final StopConditions until = new StopConditions();

  /** What one manner of driving is worked out with. */
  private record Tools(CoastThenBrake runIn, LegSearch search, PrintableFit fitting) {}

  /** One piece of the leg, and where the next one begins. */
  private record Stretch(ApproachSolution piece, LegStart next) {}

  /**
   * How far a leg was worked out at one time.
   *
   * @param asked of the guide since the stage before
   */
  record Stage(List<ApproachSolution> pieces, List<LegStart> starts, GuideDependencies asked) {}

  /**
   * The leg as worked out.
   *
   * @param starts where each piece begins, and where the last one ends
   * @param stages in which it was worked out, but for the last
   */
  public record Leg(
      List<ApproachSolution> pieces, List<LegStart> starts, boolean stalled, List<Stage> stages) {

    /** How far it goes, m. */
    double lengthM() {
      return starts.get(starts.size() - 1).state().atM() - starts.get(0).state().atM();
    }

    /** How many pieces at the beginning another leg has taken over from this one. */
    @SuppressWarnings("ReferenceEquality") // taken over: the very same piece
    int sharedPieces(Leg other) {
      int i = 0;
      while (i < pieces.size() && i < other.pieces.size() && pieces.get(i) == other.pieces.get(i)) {
        i++;
      }
      return i;
    }

    /** The stages that are the same in another manner than that of this leg. */
    List<Stage> alike(DrivingStrategy own, DrivingStrategy other) {
      boolean onlyGuided =
          own.run().equals(other.run())
              && own.coastS() == other.coastS()
              && own.holds().equals(other.holds());
      return onlyGuided
          ? stages.stream().takeWhile(s -> s.asked().sameOf(own.guide(), other.guide())).toList()
          : List.of();
    }
  }

  LegPlanner(Assignment assignment, TrainModels bench, DriverRules rules, Places places) {
    this.assignment = assignment;
    this.bench = bench;
    this.rules = rules;
    this.places = places;
    this.stepper = bench.plannedStepper();
    this.solver = new Solver(assignment, bench.settings().brake());
  }

  /**
   * Plans from a stand at {@code startM} over all targets, of which the last is the stop.
   *
   * @param known the first stages, from another leg that is alike so far
   * @param met tells where no more needs to be worked out
   */
  Leg plan(
      double startM,
      List<Target> targets,
      DrivingStrategy manner,
      List<Stage> known,
      Predicate<LegStart> met) {
    Tools with = tools(manner);
    List<Stage> stages = new ArrayList<>(known);
    Stage from =
        stages.isEmpty()
            ? new Stage(List.of(), List.of(start(startM)), new GuideDependencies())
            : stages.remove(stages.size() - 1);
    List<ApproachSolution> pieces = new ArrayList<>(from.pieces());
    List<LegStart> starts = new ArrayList<>(from.starts());
    GuideDependencies asked = from.asked();
    double metres = targets.get(targets.size() - 1).atM() - startM;
    int mostPieces =
        (targets.size() + 2) * (targets.size() + 2)
            + (int) (metres / bench.settings().leg().lookAheadM());
    for (int piece = 0; starts.get(starts.size() - 1).next() < targets.size(); piece++) {
      if (piece > mostPieces) {
        throw new NoEnd(
            "the target to brake for first was not settled in %d tries".formatted(piece));
      }
      stages.add(new Stage(List.copyOf(pieces), List.copyOf(starts), asked));
      asked = with.runIn().askedFromNow();
      LegStart start = starts.get(starts.size() - 1);
      NextBraking choice = with.search().choose(start, targets);
      if (choice == null) {
        return new Leg(pieces, starts, true, stages);
      }
      if (choice.tooLate() && starts.size() > 1) {
        goBack(pieces, starts, choice.index());
        continue;
      }
      Stretch stretch = commit(with, start, choice, targets);
      pieces.add(stretch.piece());
      starts.add(stretch.next());
      if (met.test(stretch.next())) {
        break;
      }
    }
    return new Leg(pieces, starts, false, stages);
  }

  /** To before the last braking, which is done without; the run goes to a later target instead. */
  private static void goBack(List<ApproachSolution> pieces, List<LegStart> starts, int index) {
    int last = pieces.size() - 1;
    while (last > 0 && starts.get(last + 1).goesOn()) {
      last--;
    }
    boolean braked = !starts.get(last + 1).goesOn();
    LegStart earlier = starts.get(last);
    pieces.subList(last, pieces.size()).clear();
    starts.subList(last, starts.size()).clear();
    starts.add(earlier.towards(braked ? index : earlier.next()));
  }

  /** Stretches along which nothing was braked for belong to the approach behind them. */
  private static List<ApproachSolution> joined(Leg leg) {
    List<ApproachSolution> all = new ArrayList<>();
    List<Instruction> before = new ArrayList<>();
    double fromM = Double.NaN;
    for (int i = 0; i < leg.pieces().size(); i++) {
      ApproachSolution piece = leg.pieces().get(i);
      fromM = Double.isNaN(fromM) ? piece.fromM() : fromM;
      if (leg.starts().get(i + 1).goesOn()) {
        before.addAll(piece.instructions());
        continue;
      }
      List<Instruction> instructions = new ArrayList<>();
      before.forEach(
          b -> instructions.add(new Instruction(piece.target(), b.trigger(), b.command())));
      instructions.addAll(piece.instructions());
      all.add(piece.from(fromM).with(instructions));
      before.clear();
      fromM = Double.NaN;
    }
    return all;
  }

  /**
   * The approaches of a leg as they are told. A brake that stays on past its board comes off on the
   * page of that board.
   */
  static List<ApproachSolution> told(Leg leg) {
    List<ApproachSolution> all = joined(leg);
    for (int i = 1; i < all.size(); i++) {
      ApproachSolution before = all.get(i - 1);
      List<Instruction> here = all.get(i).instructions();
      if (before.staysOn() && !here.isEmpty() && here.get(0).command().isRelease()) {
        List<Instruction> with = new ArrayList<>(before.instructions());
        with.add(new Instruction(before.target(), here.get(0).trigger(), here.get(0).command()));
        all.set(i - 1, before.with(with));
        all.set(i, all.get(i).with(here.subList(1, here.size())));
      }
    }
    return all;
  }

  /** At a stand, everything still ahead. */
  private LegStart start(double startM) {
    stepper.place(0, startM, 0);
    RunStates line = new RunStates();
    line.add(stepper.save());
    return new LegStart(
        stepper.save(), Double.POSITIVE_INFINITY, 0, line, 0, new SpeedsSeen(), false, false);
  }

  private Tools tools(DrivingStrategy manner) {
    DriverRules driver = rules.in(manner);
    CoastThenBrake runIn = new CoastThenBrake(assignment, bench, driver, stepper);
    return new Tools(
        runIn,
        new LegSearch(assignment, bench, driver, runIn, stepper),
        new PrintableFit(assignment.policy().practice(), driver, places, runIn, stepper));
  }

  /** To the yard where a coarser place would end too far short of a stop. */
  private Stretch commit(Tools with, LegStart start, NextBraking choice, List<Target> targets) {
    Target target = targets.get(choice.index());
    if (choice.goesOn()) {
      return goesOn(start, choice, target);
    }
    Stretch usual = commit(with, start, choice, target, with.fitting().fit(choice, start, target));
    double shortM = target.atM() - usual.piece().endM();
    boolean misses =
        target.standsThere()
            && !choice.tooLate()
            && shortM > assignment.policy().margins().stopTolerance().metres();
    return misses
        ? commit(with, start, choice, target, with.fitting().toTheUnit(choice, start, target))
        : usual;
  }

  private Stretch commit(
      Tools with, LegStart start, NextBraking choice, Target target, PrintableFit.Fit fit) {
    CoastThenBrake runIn = with.runIn();
    List<Instruction> out = new ArrayList<>();
    double exact = choice.brakingM();
    RunStates line = new RunStates();
    line.addAll(start.line());
    SpeedsSeen seen = new SpeedsSeen(start.seen());
    double braking = fit.brakingM();
    for (FreeRun.Step step : with.fitting().run(choice, start, fit)) {
      told(step, target).ifPresent(out::add);
      line.add(step.after());
      seen.from(step.after().speedMps());
    }
    Optional<Double> off = Optional.empty();
    if (stepper.notch() >= 0) {
      stepper.shutOff();
      seen.from(stepper.speedMps());
      out.add(new Instruction(target, new Trigger.AtPlace(fit.upToM()), new Command.ShutOff()));
      line.add(stepper.save());
      off = Optional.of(fit.upToM());
    }
    seen.see(stepper.speedMps());
    if (choice.coastOnly()) {
      stepper.record((t, s, v, p, notch) -> seen.see(v));
      stepper.advance(until.clear().place(Math.max(stepper.atM(), choice.aimM())));
      stepper.record(null);
      ApproachSolution coasted =
          new ApproachSolution(
              target,
              start.state().atM(),
              off,
              Optional.empty(),
              Optional.empty(),
              stepper.speedMps(),
              Optional.empty(),
              line,
              out,
              stepper.atM(),
              true);
      return new Stretch(coasted, next(line, target, choice.index(), seen));
    }
    stepper.advance(until.clear().place(braking));
    Snapshot atBraking = stepper.save();
    Braking solved =
        solver.forPlace(
            runIn.braking(target), stepper, atBraking, choice.aimM(), target.standsThere());
    stepper.restore(atBraking);
    RunStates before = new RunStates();
    before.addAll(line);
    if (stepper.demandPa() > 0) {
      // What is left when the brake fails at this point: the checking application is gone too.
      stepper.place(stepper.timeS(), stepper.atM(), stepper.speedMps());
      before.add(stepper.save());
      stepper.restore(atBraking);
    }
    int soFar = out.size();
    stepper.record(new LineRecorder(line, stepper, seen));
    Braking.Outcome outcome = solved.run(stepper, new Trigger.AtPlace(braking), target, out);
    stepper.record(null);
    boolean braked = out.subList(soFar, out.size()).stream().anyMatch(i -> i.command().isBrake());
    ApproachSolution piece =
        new ApproachSolution(
            target,
            start.state().atM(),
            off,
            braked ? Optional.of(exact) : Optional.empty(),
            braked ? Optional.of(braking) : Optional.empty(),
            atBraking.speedMps(),
            braked ? Optional.of(solved) : Optional.empty(),
            before,
            out,
            solved.staysOn() && stepper.demandPa() > 0
                ? solved.offM(stepper, rules.band().checkToMps(target.speedMps()))
                : outcome.endM(),
            !choice.tooLate() && outcome.held());
    return new Stretch(piece, next(line, target, choice.index(), seen));
  }

  /** As the run was made, up to where it was looked ahead. */
  private Stretch goesOn(LegStart start, NextBraking choice, Target target) {
    List<Instruction> out = new ArrayList<>();
    RunStates line = new RunStates();
    line.addAll(start.line());
    for (FreeRun.Step step : choice.free().steps()) {
      told(step, target).ifPresent(out::add);
      line.add(step.after());
    }
    Snapshot state = stepper.save();
    line.add(state);
    ApproachSolution piece =
        new ApproachSolution(
            target,
            start.state().atM(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            stepper.speedMps(),
            Optional.empty(),
            line,
            out,
            stepper.atM(),
            true);
    return new Stretch(
        piece,
        new LegStart(
            state,
            start.capMps(),
            start.capUntilM(),
            line,
            start.next(),
            choice.free().seen(),
            true,
            false));
  }

  private static Optional<Instruction> told(FreeRun.Step step, Target target) {
    return step.held()
        ? Optional.empty()
        : Optional.of(new Instruction(target, step.trigger(), step.command()));
  }

  private LegStart next(RunStates line, Target target, int index, SpeedsSeen seen) {
    Snapshot state = stepper.save();
    line.add(state);
    return new LegStart(
        state, target.speedMps(), target.atM(), line, index + 1, seen, false, false);
  }

  /**
   * Keeps the states of a braking, so that a later approach can be picked up within it, and the
   * speeds since the brake came off.
   */
  private record LineRecorder(RunStates line, Stepper stepper, SpeedsSeen seen)
      implements Recorder {
    @Override
    public void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
      line.add(stepper.save());
      if (stepper.demandPa() > 0) {
        seen.from(speedMps);
      } else {
        seen.see(speedMps);
      }
    }
  }
}
