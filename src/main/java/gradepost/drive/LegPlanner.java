package gradepost.drive;

import gradepost.motion.Recorder;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.Until;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Works out the run from one stop to the next: under the driver's rules until the first place where
 * something ahead must be braked for, then that braking, and on from there.
 */
final class LegPlanner {
  private final Assignment assignment;
  private final Bench bench;
  private final DriverRules rules;
  private final Places places;
  private final Solver solver;
  private final Stepper stepper;
  private final Until until = new Until();

  /** What one manner of driving is worked out with. */
  private record Tools(RunIn runIn, LegSearch search, Fitting fitting) {}

  /** One piece of the leg, and where the next one begins. */
  record Stretch(Piece piece, LegStart next) {}

  /**
   * What was decided at one place, from what went before and what the guide says of the way ahead.
   *
   * @param choice empty-handed, null, where the train stalls
   * @param stretch null where there is none: the target is passed too fast from here
   */
  record Decision(@Nullable Choice choice, @Nullable Stretch stretch, Asked asked) {}

  /**
   * The leg as worked out.
   *
   * @param decisions in the order in which they were made
   */
  record Leg(List<Piece> pieces, boolean stalled, List<Decision> decisions) {

    /** What is decided alike, driven in another manner than that of this leg. */
    List<Decision> alike(Manner own, Manner other) {
      boolean onlyGuided = own.run().equals(other.run()) && own.coastS() == other.coastS();
      return onlyGuided
          ? decisions.stream().takeWhile(d -> d.asked().sameOf(own.guide(), other.guide())).toList()
          : List.of();
    }
  }

  LegPlanner(Assignment assignment, Bench bench, DriverRules rules, Places places) {
    this.assignment = assignment;
    this.bench = bench;
    this.rules = rules;
    this.places = places;
    this.stepper = bench.plannedStepper();
    this.solver = new Solver(assignment);
  }

  /**
   * Plans from a stand at {@code startM} over all targets, of which the last is the stop.
   *
   * @param known what is decided first, from another leg that was decided alike up to there
   */
  Leg plan(double startM, List<Target> targets, Manner manner, List<Decision> known) {
    Tools with = tools(manner);
    List<Piece> pieces = new ArrayList<>();
    List<LegStart> starts = new ArrayList<>();
    List<Decision> decisions = new ArrayList<>();
    starts.add(start(startM));
    while (starts.get(starts.size() - 1).next() < targets.size()) {
      LegStart start = starts.get(starts.size() - 1);
      int number = decisions.size();
      Decision decision =
          number < known.size()
              ? known.get(number)
              : decision(with, start, targets, starts.size() == 1);
      decisions.add(decision);
      if (decision.choice() == null) {
        return new Leg(pieces, true, decisions);
      }
      if (decision.stretch() == null) {
        starts.remove(starts.size() - 1);
        pieces.remove(pieces.size() - 1);
        LegStart earlier = starts.remove(starts.size() - 1);
        starts.add(earlier.towards(decision.choice().index()));
        continue;
      }
      pieces.add(decision.stretch().piece());
      starts.add(decision.stretch().next());
    }
    return new Leg(pieces, false, decisions);
  }

  private Decision decision(Tools with, LegStart start, List<Target> targets, boolean first) {
    Asked asked = with.runIn().askedFromNow();
    Choice choice = with.search().choose(start, targets);
    boolean goes = choice != null && (first || !choice.tooLate());
    return new Decision(choice, goes ? commit(with, start, choice, targets) : null, asked);
  }

  /** At a stand, everything still ahead. */
  private LegStart start(double startM) {
    stepper.place(0, startM, 0);
    Line line = new Line();
    line.add(stepper.save());
    return new LegStart(stepper.save(), Double.POSITIVE_INFINITY, 0, line, 0);
  }

  private Tools tools(Manner manner) {
    DriverRules driver = rules.in(manner);
    RunIn runIn = new RunIn(assignment, bench, driver, stepper);
    return new Tools(
        runIn,
        new LegSearch(assignment, bench, driver, runIn, stepper),
        new Fitting(driver, places, runIn, stepper));
  }

  /** To the yard where a coarser place would end too far short of a stop. */
  private Stretch commit(Tools with, LegStart start, Choice choice, List<Target> targets) {
    Target target = targets.get(choice.index());
    Stretch usual = commit(with, start, choice, target, with.fitting().fit(choice, start, target));
    double shortM = target.atM() - usual.piece().endM();
    boolean misses =
        target.speedMps() == 0
            && !choice.tooLate()
            && shortM > assignment.policy().margins().stopTolerance().metres();
    return misses
        ? commit(with, start, choice, target, with.fitting().toTheUnit(choice, start, target))
        : usual;
  }

  private Stretch commit(
      Tools with, LegStart start, Choice choice, Target target, Fitting.Fit fit) {
    RunIn runIn = with.runIn();
    List<Instruction> out = new ArrayList<>();
    double exact = choice.brakingM();
    Line line = new Line();
    line.addAll(start.line());
    double braking = fit.brakingM();
    for (FreeRun.Step step : with.fitting().run(choice, start, fit)) {
      out.add(new Instruction(target, step.trigger(), step.command()));
      line.add(step.after());
    }
    Optional<Double> off = Optional.empty();
    if (stepper.notch() >= 0) {
      stepper.shutOff();
      out.add(new Instruction(target, new Trigger.AtPlace(fit.upToM()), new Command.ShutOff()));
      line.add(stepper.save());
      off = Optional.of(fit.upToM());
    }
    if (choice.coastOnly()) {
      stepper.advance(until.clear().place(Math.max(stepper.atM(), choice.aimM())));
      Piece coasted =
          new Piece(
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
      return new Stretch(coasted, next(line, target, choice.index()));
    }
    stepper.advance(until.clear().place(braking));
    Snapshot atBraking = stepper.save();
    Braking solved =
        solver.forPlace(
            runIn.braking(target), stepper, atBraking, choice.aimM(), target.speedMps() == 0);
    stepper.restore(atBraking);
    Line before = new Line();
    before.addAll(line);
    if (stepper.demandPa() > 0) {
      // What is left when the brake fails at this point: the checking application is gone too.
      stepper.place(stepper.timeS(), stepper.atM(), stepper.speedMps());
      before.add(stepper.save());
      stepper.restore(atBraking);
    }
    int soFar = out.size();
    stepper.record(new LineRecorder(line, stepper));
    Braking.Outcome outcome = solved.run(stepper, new Trigger.AtPlace(braking), target, out);
    stepper.record(null);
    boolean braked =
        out.subList(soFar, out.size()).stream().anyMatch(i -> i.command() instanceof Command.Brake);
    Piece piece =
        new Piece(
            target,
            start.state().atM(),
            off,
            braked ? Optional.of(exact) : Optional.empty(),
            braked ? Optional.of(braking) : Optional.empty(),
            atBraking.speedMps(),
            braked ? Optional.of(solved) : Optional.empty(),
            before,
            out,
            outcome.endM(),
            !choice.tooLate() && outcome.held());
    return new Stretch(piece, next(line, target, choice.index()));
  }

  private LegStart next(Line line, Target target, int index) {
    Snapshot state = stepper.save();
    line.add(state);
    return new LegStart(state, target.speedMps(), target.atM(), line, index + 1);
  }

  /** Keeps the states of a braking, so that a later approach can be picked up within it. */
  private record LineRecorder(Line line, Stepper stepper) implements Recorder {
    @Override
    public void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
      line.add(stepper.save());
    }
  }
}
