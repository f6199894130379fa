package gradepost.drive;

import gradepost.motion.Recorder;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.Until;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Works out the run from one stop to the next: under the driver's rules until the first place where
 * something ahead must be braked for, then that braking, and on from there.
 */
final class LegPlanner {
  /** A higher notch is not taken so shortly before power comes off. */
  private static final double HARDLY_USED_S = 5;

  private final LegSearch search;
  private final Fitting fitting;
  private final RunIn runIn;
  private final Solver solver;
  private final Stepper stepper;
  private final Until until = new Until();

  private final List<Piece> pieces = new ArrayList<>();
  private boolean stalled;

  LegPlanner(Assignment assignment, Bench bench, DriverRules rules, Places places) {
    this.stepper = bench.plannedStepper();
    this.runIn = new RunIn(assignment, bench, rules, stepper);
    this.search = new LegSearch(assignment, bench, rules, runIn, stepper);
    this.fitting = new Fitting(rules, places, runIn, stepper);
    this.solver = new Solver(assignment);
  }

  List<Piece> pieces() {
    return pieces;
  }

  boolean stalled() {
    return stalled;
  }

  /** Plans from a stand at {@code startM} over all targets, of which the last is the stop. */
  void plan(double startM, List<Target> targets) {
    stepper.place(0, startM, 0);
    Line line = new Line();
    line.add(stepper.save());
    List<LegStart> starts = new ArrayList<>();
    starts.add(new LegStart(stepper.save(), Double.POSITIVE_INFINITY, 0, line, 0));
    while (starts.get(starts.size() - 1).next() < targets.size() && !stalled) {
      LegStart start = starts.get(starts.size() - 1);
      Choice choice = search.choose(start, targets);
      if (choice == null) {
        stalled = true;
        return;
      }
      if (choice.tooLate() && starts.size() > 1) {
        starts.remove(starts.size() - 1);
        pieces.remove(pieces.size() - 1);
        LegStart earlier = starts.get(starts.size() - 1);
        starts.set(
            starts.size() - 1,
            new LegStart(
                earlier.state(),
                earlier.capMps(),
                earlier.capUntilM(),
                earlier.line(),
                choice.index()));
        continue;
      }
      starts.add(commit(start, choice, targets));
    }
  }

  private LegStart commit(LegStart start, Choice choice, List<Target> targets) {
    Target target = targets.get(choice.index());
    List<Instruction> out = new ArrayList<>();
    double exact = choice.brakingM();
    Line line = new Line();
    line.addAll(start.line());
    Fitting.Fit fit = fitting.fit(choice, start, target);
    double braking = fit.brakingM();
    boolean powered = fit.powered();
    double upTo = powered ? fit.shutOffM() : braking;
    choice.line().pickUp(stepper, upTo);
    double offS = powered ? stepper.timeS() : Double.POSITIVE_INFINITY;
    for (FreeRun.Step step : choice.free().steps()) {
      boolean hardlyUsed = higherNotch(step) && step.after().timeS() > offS - HARDLY_USED_S;
      boolean dropped = step.after().atM() >= fit.dropFromM();
      if (step.after().atM() <= upTo + 1e-6 && !hardlyUsed && !dropped) {
        out.add(new Instruction(target, step.trigger(), step.command()));
        line.add(step.after());
      }
    }
    line.pickUp(stepper, upTo);
    Optional<Double> off = Optional.empty();
    if (stepper.notch() >= 0) {
      stepper.shutOff();
      out.add(new Instruction(target, new Trigger.AtPlace(upTo), new Command.ShutOff()));
      line.add(stepper.save());
      off = Optional.of(upTo);
    }
    if (choice.coastOnly()) {
      stepper.advance(until.clear().place(Math.max(stepper.atM(), runIn.aimM(target))));
      pieces.add(
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
              true));
      return next(line, target, choice.index());
    }
    stepper.advance(until.clear().place(braking));
    Snapshot atBraking = stepper.save();
    Braking solved =
        solver.forPlace(
            runIn.braking(target), stepper, atBraking, runIn.aimM(target), target.speedMps() == 0);
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
    pieces.add(
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
            !choice.tooLate() && outcome.held()));
    return next(line, target, choice.index());
  }

  private static boolean higherNotch(FreeRun.Step step) {
    return step.command() instanceof Command.Power power && power.notch() > 0;
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
