package gradepost.drive;

import gradepost.motion.Ended;
import gradepost.motion.Recorder;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.Until;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Works out the run from one stop to the next: under the driver's rules until the first place where
 * something ahead must be braked for, then that braking, and on from there.
 */
final class LegPlanner {
  private static final double TOLERANCE_M = 0.01;
  private static final double NOT_HELD = -1e6;

  /** Longest coasting that stands in for a brake application before a reduction. */
  private static final double LONGEST_COAST_S = 45;

  /** Coasting before a braking point ends when the speed has fallen to this share. */
  private static final double KEPT_WHILE_COASTING = 0.75;

  /** A printed place may cost so much of the speed that the computed one has. */
  private static final double SPEED_KEPT = 0.8;

  /** A higher notch is not taken so shortly before power comes off. */
  private static final double HARDLY_USED_S = 5;

  /** A jump of the margin by more than this is a power-on that had better not been made. */
  private static final double JUMP_M = 3;

  private final Assignment assignment;
  private final Bench bench;
  private final DriverRules rules;
  private final Places places;
  private final Solver solver;
  private final Stepper stepper;
  private final UnitStyle units;
  private final Until until = new Until();
  private final double leadS;

  private final List<Piece> pieces = new ArrayList<>();
  private boolean stalled;

  LegPlanner(Assignment assignment, Bench bench, DriverRules rules, Places places) {
    this.assignment = assignment;
    this.bench = bench;
    this.rules = rules;
    this.places = places;
    this.solver = new Solver(assignment);
    this.stepper = bench.plannedStepper();
    this.units = assignment.route().units();
    this.leadS = rules.run().coastBeforeBraking().seconds();
  }

  List<Piece> pieces() {
    return pieces;
  }

  boolean stalled() {
    return stalled;
  }

  /** Where the leg stands at the start of a piece. */
  private record Start(Snapshot state, double capMps, double capUntilM, Line line, int next) {}

  /** Plans from a stand at {@code startM} over all targets, of which the last is the stop. */
  void plan(double startM, List<Target> targets) {
    stepper.place(0, startM, 0);
    Line line = new Line();
    line.add(stepper.save());
    List<Start> starts = new ArrayList<>();
    starts.add(new Start(stepper.save(), Double.POSITIVE_INFINITY, 0, line, 0));
    while (starts.get(starts.size() - 1).next() < targets.size() && !stalled) {
      Start start = starts.get(starts.size() - 1);
      Choice choice = choose(start, targets);
      if (choice == null) {
        stalled = true;
        return;
      }
      if (choice.tooLate() && starts.size() > 1) {
        starts.remove(starts.size() - 1);
        pieces.remove(pieces.size() - 1);
        Start earlier = starts.get(starts.size() - 1);
        starts.set(
            starts.size() - 1,
            new Start(
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

  /** The target that must be braked for first, and from where on the free run. */
  private record Choice(
      int index,
      double atM,
      double brakingM,
      boolean coastOnly,
      boolean tooLate,
      FreeRun free,
      Line line) {}

  private @org.jspecify.annotations.Nullable Choice choose(Start start, List<Target> targets) {
    double noPowerFrom = Double.POSITIVE_INFINITY;
    double noPowerTo = Double.POSITIVE_INFINITY;
    Choice unspared = null;
    Target stop = targets.get(targets.size() - 1);
    for (int attempt = 0; attempt < 20; attempt++) {
      stepper.restore(start.state());
      FreeRun free =
          new FreeRun(
              rules,
              assignment,
              bench,
              stepper,
              stop.atM(),
              start.capMps(),
              start.capUntilM(),
              noPowerFrom,
              noPowerTo);
      Slowest slowest = new Slowest(noPowerFrom, noPowerTo);
      stepper.record(slowest);
      free.run();
      stepper.record(null);
      if (free.stalled() || slowest.lost()) {
        // Coasting on would not get there: the power that seemed wasted is needed.
        return unspared;
      }
      double end = stepper.atM();
      Line line = new Line();
      line.addAll(start.line());
      free.steps().forEach(s -> line.add(s.after()));
      Choice first = null;
      for (int i = start.next(); i < targets.size(); i++) {
        Choice choice = brakingFor(start, targets, i, end, free, line);
        if (choice != null && (first == null || choice.brakingM() < first.brakingM())) {
          first = choice;
        }
        if (choice != null && choice.tooLate()) {
          return choice;
        }
      }
      if (first == null) {
        return null;
      }
      double suppress = wastedPowerFrom(first, start, targets);
      if (Double.isNaN(suppress)) {
        return first;
      }
      unspared = first;
      noPowerFrom = suppress;
      noPowerTo = assignment.path().printedAtOrAfter(targets.get(first.index()).atM());
    }
    return unspared;
  }

  private @org.jspecify.annotations.Nullable Choice brakingFor(
      Start start, List<Target> targets, int index, double end, FreeRun free, Line line) {
    Target target = targets.get(index);
    if (target.atM() < end - 2 * units.placeStepM()) {
      return null;
    }
    Braking braking = braking(target);
    double from = start.state().atM();
    double atEnd = margin(line, end, targets, start.next(), index, braking);
    if (atEnd >= 0) {
      return null;
    }
    if (target.speedMps() > 0) {
      Choice coast = coastFor(from, end, target, index, free, line);
      if (coast != null) {
        return coast;
      }
    }
    double atStart = margin(line, from, targets, start.next(), index, braking);
    if (atStart < 0) {
      return new Choice(index, from, from, false, true, free, line);
    }
    double x =
        Root.lastNotNegative(
            at -> margin(line, at, targets, start.next(), index, braking),
            from,
            end,
            atStart,
            atEnd,
            TOLERANCE_M);
    approach(line, x);
    return new Choice(index, x, stepper.atM(), false, false, free, line);
  }

  /** Whether shutting off early enough does without a brake before a reduction. */
  private @org.jspecify.annotations.Nullable Choice coastFor(
      double from, double end, Target target, int index, FreeRun free, Line line) {
    double aim = aimM(target);
    if (aim <= from) {
      return null;
    }
    double under = assignment.policy().margins().underSpeed().metresPerSecond();
    double wanted = Math.max(target.speedMps() - under, 0.5 * target.speedMps());
    double low = Math.max(from, end - LONGEST_COAST_S * 40);
    double atLow = coastMargin(line, low, aim, wanted);
    double high = Math.min(end, aim);
    double atHigh = coastMargin(line, high, aim, wanted);
    if (atLow < 0 || atHigh >= 0) {
      return null;
    }
    double x =
        Root.lastNotNegative(
            at -> coastMargin(line, at, aim, wanted), low, high, atLow, atHigh, TOLERANCE_M);
    line.pickUp(stepper, x);
    boolean checking = stepper.demandPa() > 0;
    double startS = stepper.timeS();
    stepper.shutOff();
    Ended ended = stepper.advance(until.clear().place(aim));
    if (checking || ended != Ended.PLACE || stepper.timeS() - startS > LONGEST_COAST_S) {
      return null;
    }
    return new Choice(index, x, x, true, false, free, line);
  }

  /** In m/s: how far below the wanted speed the train is at the aim when it coasts from here. */
  private double coastMargin(Line line, double x, double aim, double wanted) {
    line.pickUp(stepper, x);
    stepper.shutOff();
    Ended ended = stepper.advance(until.clear().place(aim));
    return ended == Ended.PLACE ? wanted - stepper.speedMps() : wanted;
  }

  private double aimM(Target target) {
    return target.speedMps() == 0
        ? target.atM()
        : target.atM() - assignment.policy().margins().beforeBoard().metres();
  }

  private Braking braking(Target target) {
    return Braking.of(assignment, bench, target);
  }

  /**
   * Coasts from {@code x} as long as is needed before a braking point; leaves the stepper there.
   */
  private void approach(Line line, double x) {
    double off = line.powerOffSinceS(x);
    line.pickUp(stepper, x);
    if (stepper.demandPa() > 0) {
      return;
    }
    double coasted = off < 0 ? 0 : stepper.timeS() - off;
    stepper.shutOff();
    if (coasted < leadS) {
      double ceiling = rules.ceilingAt(stepper.atM());
      until
          .clear()
          .time(stepper.timeS() + leadS - coasted)
          .speedDown(KEPT_WHILE_COASTING * stepper.speedMps());
      if (stepper.speedMps() < ceiling - 1e-6) {
        until.speedUp(ceiling);
      }
      stepper.advance(until);
    }
  }

  /**
   * How far short of its aim the train is when power is taken off at {@code x}; negative when it
   * runs past, or when it is too fast at a reduction on the way.
   */
  private double margin(
      Line line, double x, List<Target> targets, int next, int index, Braking braking) {
    approach(line, x);
    Guard guard = new Guard(targets.subList(next, index));
    stepper.record(guard);
    Braking.Outcome outcome = braking.run(stepper);
    stepper.record(null);
    if (!outcome.held()) {
      return NOT_HELD;
    }
    return Math.min(aimM(targets.get(index)) - outcome.endM(), guard.marginM());
  }

  /** Where power was taken for too short a time, or without need; NaN where all is well. */
  private double wastedPowerFrom(Choice choice, Start start, List<Target> targets) {
    List<FreeRun.Step> steps = choice.free().steps();
    double leastS = rules.run().leastPower().seconds();
    for (FreeRun.Step step : steps) {
      boolean on = step.command() instanceof Command.Power p && p.notch() == 0;
      if (!on || step.trigger() instanceof Trigger.Start) {
        continue;
      }
      double at = step.after().atM();
      if (at > choice.atM() + units.placeStepM()) {
        break;
      }
      choice.line().pickUp(stepper, Math.max(choice.atM(), at));
      boolean lasting = stepper.notch() >= 0 && choice.atM() >= at;
      boolean jump =
          choice.atM() < at
              && !choice.coastOnly()
              && at - choice.atM() < 1
              && margin(
                      choice.line(),
                      choice.atM(),
                      targets,
                      start.next(),
                      choice.index(),
                      braking(targets.get(choice.index())))
                  > JUMP_M;
      choice.line().pickUp(stepper, Math.max(choice.atM(), at));
      if (jump || (lasting && tooShort(step, leastS, choice))) {
        return at - 1e-3;
      }
    }
    return Double.NaN;
  }

  private boolean tooShort(FreeRun.Step on, double leastS, Choice choice) {
    double since = stepper.timeS() - on.after().timeS();
    boolean followed =
        choice.free().steps().stream()
            .filter(s -> s.command() instanceof Command.ShutOff)
            .anyMatch(s -> s.after().atM() >= on.after().atM() && s.after().atM() <= choice.atM());
    double place = assignment.path().printedAtOrBefore(choice.atM());
    return !followed && (since < leastS || place <= on.after().atM());
  }

  /**
   * Where it is done in print.
   *
   * @param dropFromM power taken from here on is done without
   */
  private record Fit(double brakingM, double shutOffM, boolean powered, double dropFromM) {}

  /** At a landmark where that costs little speed; else on the grid; else to the yard. */
  private Fit fit(Choice choice, Start start, Target target) {
    double exact = choice.brakingM();
    if (choice.coastOnly() || choice.tooLate()) {
      return fit(choice, start, places.onGrid(choice.atM(), target.atM()), exact);
    }
    approach(choice.line(), choice.atM());
    double wanted = SPEED_KEPT * stepper.speedMps();
    double[] points = {
      places.printed(exact, target.atM(), lastOffM(choice, start)),
      places.onGrid(exact, target.atM()),
      places.toTheUnit(exact, target.atM())
    };
    Fit fit = null;
    for (double point : points) {
      double shutOff = choice.atM() - (exact - point);
      boolean fine = point == points[points.length - 1];
      fit =
          fit(
              choice,
              start,
              fine
                  ? places.toTheUnit(choice.atM(), target.atM())
                  : places.onGrid(Math.min(shutOff, point), target.atM()),
              point);
      if (speedAt(choice, fit) >= wanted) {
        return fit;
      }
    }
    return fit;
  }

  private Fit fit(Choice choice, Start start, double shutOffM, double brakingM) {
    choice.line().pickUp(stepper, choice.atM());
    boolean powered = stepper.notch() >= 0;
    double lastOn = lastOnM(choice, start);
    if (!powered || shutOffM >= lastOn + 1) {
      return new Fit(brakingM, shutOffM, powered, Double.POSITIVE_INFINITY);
    }
    // Hardly worth taking power: done without where the speed allows.
    choice.line().pickUp(stepper, lastOn);
    boolean spared = stepper.speedMps() > 0.6 * rules.ceilingAt(lastOn);
    return new Fit(
        brakingM,
        Math.max(lastOn, shutOffM),
        !spared,
        spared ? lastOn - 1e-3 : Double.POSITIVE_INFINITY);
  }

  /** Speed at the printed braking point when power comes off at the printed place. */
  private double speedAt(Choice choice, Fit fit) {
    double off = fit.powered() ? Math.min(fit.shutOffM(), fit.brakingM()) : fit.brakingM();
    choice.line().pickUp(stepper, Math.min(off, fit.dropFromM()));
    stepper.shutOff();
    stepper.advance(until.clear().place(fit.brakingM()));
    return stepper.atM() < fit.brakingM() - 1e-6 ? 0 : stepper.speedMps();
  }

  private Start commit(Start start, Choice choice, List<Target> targets) {
    Target target = targets.get(choice.index());
    List<Instruction> out = new ArrayList<>();
    double exact = choice.brakingM();
    Line line = new Line();
    line.addAll(start.line());
    Fit fit = fit(choice, start, target);
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
      stepper.advance(until.clear().place(Math.max(stepper.atM(), aimM(target))));
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
        solver.forPlace(braking(target), stepper, atBraking, aimM(target), target.speedMps() == 0);
    stepper.restore(atBraking);
    Line before = new Line();
    before.addAll(line);
    int soFar = out.size();
    stepper.record(new LineRecorder(line, stepper));
    Braking.Outcome outcome = solved.run(stepper, new Trigger.AtPlace(braking), target, out);
    stepper.record(null);
    boolean braked = out.size() > soFar;
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

  private Start next(Line line, Target target, int index) {
    Snapshot state = stepper.save();
    line.add(state);
    return new Start(state, target.speedMps(), target.atM(), line, index + 1);
  }

  /** The last place before the choice where power was taken off, or the start. */
  private double lastOffM(Choice choice, Start start) {
    double at = start.state().atM();
    for (FreeRun.Step step : choice.free().steps()) {
      if (step.after().atM() <= choice.atM() && step.command() instanceof Command.ShutOff) {
        at = step.after().atM();
      }
    }
    return at;
  }

  private double lastOnM(Choice choice, Start start) {
    double at = start.state().atM();
    for (FreeRun.Step step : choice.free().steps()) {
      boolean on = step.command() instanceof Command.Power power && power.notch() == 0;
      if (on && step.after().atM() <= choice.atM()) {
        at = step.after().atM();
      }
    }
    return at;
  }

  /** Keeps the states of a braking, so that a later approach can be picked up within it. */
  private record LineRecorder(Line line, Stepper stepper) implements Recorder {
    @Override
    public void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
      line.add(stepper.save());
    }
  }

  /** Watches how much speed is lost where power is spared. */
  private static final class Slowest implements Recorder {
    private static final double KEPT = 0.6;

    private final double fromM;
    private final double toM;
    private double firstMps = Double.NaN;
    private boolean lost;

    Slowest(double fromM, double toM) {
      this.fromM = fromM;
      this.toM = toM;
    }

    @Override
    public void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
      if (atM >= fromM && atM <= toM) {
        firstMps = Double.isNaN(firstMps) ? speedMps : firstMps;
        lost |= speedMps < KEPT * firstMps;
      }
    }

    boolean lost() {
      return lost;
    }
  }

  /** Watches the reductions that lie before a target. */
  private static final class Guard implements Recorder {
    private final List<Target> before;
    private double lastM = Double.NaN;
    private double lastMps;
    private double marginM = Double.POSITIVE_INFINITY;

    Guard(List<Target> before) {
      this.before = before;
    }

    @Override
    public void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
      if (!Double.isNaN(lastM) && atM > lastM) {
        for (Target target : before) {
          if (target.atM() > lastM && target.atM() <= atM) {
            double share = (target.atM() - lastM) / (atM - lastM);
            double square = lastMps * lastMps + share * (speedMps * speedMps - lastMps * lastMps);
            double over = Math.sqrt(Math.max(square, 0)) - target.speedMps();
            marginM = Math.min(marginM, -20 * over);
          }
        }
      }
      lastM = atM;
      lastMps = speedMps;
    }

    double marginM() {
      return marginM;
    }
  }
}
