package gradepost.drive;

import gradepost.motion.Recorder;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.Until;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Works out the run from one stop to the next: under the driver's rules until the first place where
 * something ahead must be braked for, then that braking, and on from there.
 */
final class LegPlanner {
  /**
   * Up a terminal platform a brake that would be off for less than this before it checks the speed
   * again stays on, seconds.
   */
  private static final double OFF_S = 2.5;

  private final Assignment assignment;
  private final Bench bench;
  private final DriverRules rules;
  private final Places places;
  private final Solver solver;
  private final Stepper stepper;
  private final Until until = new Until();
  private final Map<Manner, Tools> tools = new HashMap<>();

  /** What one manner of driving is worked out with. */
  private record Tools(RunIn runIn, LegSearch search, Fitting fitting) {}

  /** One piece of the leg, and where the next one begins. */
  private record Stretch(Piece piece, LegStart next) {}

  /** The leg as worked out. */
  record Leg(List<Piece> pieces, boolean stalled) {}

  LegPlanner(Assignment assignment, Bench bench, DriverRules rules, Places places) {
    this.assignment = assignment;
    this.bench = bench;
    this.rules = rules;
    this.places = places;
    this.stepper = bench.plannedStepper();
    this.solver = new Solver(assignment);
  }

  /** Plans from a stand at {@code startM} over all targets, of which the last is the stop. */
  Leg plan(double startM, List<Target> targets, Manner manner) {
    Tools with = tools(manner);
    List<Piece> pieces = new ArrayList<>();
    List<LegStart> starts = new ArrayList<>();
    starts.add(start(startM));
    Choice before = null;
    while (starts.get(starts.size() - 1).next() < targets.size()) {
      int last = starts.size() - 1;
      Choice choice = with.search().choose(starts.get(last), targets);
      if (choice == null) {
        return new Leg(pieces, true);
      }
      if (before != null && checkedS(choice) < starts.get(last).state().timeS() + OFF_S) {
        Stretch kept = commit(with, starts.get(last - 1), before, targets, true);
        Choice then = with.search().choose(kept.next(), targets);
        if (then != null && !then.tooLate()) {
          pieces.set(last - 1, kept.piece());
          starts.set(last, kept.next());
          choice = then;
        }
      }
      LegStart start = starts.get(last);
      if (choice.tooLate() && starts.size() > 1) {
        starts.remove(starts.size() - 1);
        pieces.remove(pieces.size() - 1);
        LegStart earlier = starts.remove(starts.size() - 1);
        starts.add(earlier.towards(choice.index()));
        before = null;
        continue;
      }
      Stretch stretch = commit(with, start, choice, targets, false);
      before = steps(stretch.piece()) ? choice : null;
      pieces.add(stretch.piece());
      starts.add(stretch.next());
    }
    return new Leg(pieces, false);
  }

  /** Whether the brake is used for one step of several up a platform, all told on one page. */
  private static boolean steps(Piece piece) {
    return Approaches.terminalStep(piece.target())
        && piece.braking().filter(Braking::releases).isPresent();
  }

  /** When the speed is checked, if that is the first thing done; on the clock of the leg. */
  private static double checkedS(Choice choice) {
    return choice.free().steps().stream()
        .findFirst()
        .filter(step -> step.after().atM() <= choice.atM())
        .filter(step -> step.command() instanceof Command.Brake)
        .map(step -> step.after().timeS())
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** At a stand, everything still ahead. */
  private LegStart start(double startM) {
    stepper.place(0, startM, 0);
    Line line = new Line();
    line.add(stepper.save());
    return new LegStart(stepper.save(), Double.POSITIVE_INFINITY, 0, line, 0);
  }

  private Tools tools(Manner manner) {
    return tools.computeIfAbsent(
        manner,
        m -> {
          DriverRules driver = rules.in(m);
          RunIn runIn = new RunIn(assignment, bench, driver, stepper);
          return new Tools(
              runIn,
              new LegSearch(assignment, bench, driver, runIn, stepper),
              new Fitting(driver, places, runIn, stepper));
        });
  }

  /**
   * To the yard where a coarser place would end too far short of a stop.
   *
   * @param staysOn whether the brake is left on for what comes next
   */
  private Stretch commit(
      Tools with, LegStart start, Choice choice, List<Target> targets, boolean staysOn) {
    Target target = targets.get(choice.index());
    Fitting.Fit fit = with.fitting().fit(choice, start, target);
    Stretch usual = commit(with, start, choice, target, fit, staysOn);
    double shortM = target.atM() - usual.piece().endM();
    boolean misses =
        target.speedMps() == 0
            && !choice.tooLate()
            && shortM > assignment.policy().margins().stopTolerance().metres();
    return misses
        ? commit(
            with, start, choice, target, with.fitting().toTheUnit(choice, start, target), staysOn)
        : usual;
  }

  private Stretch commit(
      Tools with, LegStart start, Choice choice, Target target, Fitting.Fit fit, boolean staysOn) {
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
    Braking released =
        solver.forPlace(
            runIn.braking(target), stepper, atBraking, choice.aimM(), target.speedMps() == 0);
    Braking solved = staysOn ? released.stayingOn() : released;
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
