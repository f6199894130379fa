package gradepost.drive.leg;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.LastPlace;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.Root;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.SpeedLossMonitor;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.DriverRules;
import gradepost.motion.Recorder;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/** Finds the target that must be braked for first, and where on the free run that begins. */
final class LegSearch {
  private final Assignment assignment;
  private final TrainModels bench;
  private final PlannerSettings.Leg settings;
  private final DriverRules rules;
  private final CoastThenBrake runIn;
  private final Stepper stepper;
  private final UnitStyle units;
  private final StopConditions until = new StopConditions();

  LegSearch(
      Assignment assignment,
      TrainModels bench,
      DriverRules rules,
      CoastThenBrake runIn,
      Stepper stepper) {
    this.assignment = assignment;
    this.bench = bench;
    this.settings = bench.settings().leg();
    this.rules = rules;
    this.runIn = runIn;
    this.stepper = stepper;
    this.units = assignment.route().units();
  }

  /** Empty-handed, null, where the train stalls whatever is done. */
  @Nullable NextBraking choose(LegStart start, List<Target> targets) {
    double noPowerFrom = Double.POSITIVE_INFINITY;
    double noPowerTo = Double.POSITIVE_INFINITY;
    NextBraking unspared = null;
    Target stop = targets.get(targets.size() - 1);
    for (int attempt = 0; attempt < settings.attempts(); attempt++) {
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
      SpeedLossMonitor slowest =
          new SpeedLossMonitor(
              noPowerFrom, noPowerTo, assignment.policy().practice().power().sparedKeeps());
      RunStates line = new RunStates();
      line.addAll(start.line());
      Recorder recorder =
          (t, s, v, p, notch) -> {
            slowest.point(t, s, v, p, notch);
            line.follow(stepper);
          };
      free.start(start.seen());
      NextBraking first = null;
      while (first == null) {
        if (free.over()) {
          return null;
        }
        stepper.record(recorder);
        free.run(nextLookM(stepper.atM()));
        stepper.record(null);
        runIn.askedUpTo(stepper.atM() + 2 * units.placeStepM());
        if (free.stalled() || slowest.lost()) {
          // Coasting on would not get there: the power that seemed wasted is needed.
          return unspared;
        }
        Snapshot end = stepper.save();
        first = first(start, targets, end, free, line);
        stepper.restore(end);
        if (first == null && free.rests() && !start.whole()) {
          return new NextBraking(
              start.next(), end.atM(), end.atM(), end.atM(), false, false, true, free, line);
        }
      }
      if (first.tooLate()) {
        return first;
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

  /** At the same places on every run, so that ways that are alike begin again alike. */
  private double nextLookM(double atM) {
    double stretch = settings.lookAheadM();
    return (Math.floor(atM / stretch + Slack.ROUNDING) + 1) * stretch;
  }

  /** What is to be braked for first, or too late already; null where the run may go on. */
  private @Nullable NextBraking first(
      LegStart start, List<Target> targets, Snapshot end, FreeRun free, RunStates line) {
    NextBraking first = null;
    for (int i = start.next(); i < targets.size(); i++) {
      if (first != null && targets.get(i).speedMps() >= targets.get(first.index()).speedMps()) {
        // Braking for it would end before the lower speed on the way, and be over it there.
        continue;
      }
      if (beyond(targets.get(i).atM() - end.atM(), end.speedMps())) {
        break;
      }
      NextBraking choice = brakingFor(start, targets, i, end.atM(), free, line, first);
      if (choice != null && (first == null || choice.brakingM() < first.brakingM())) {
        first = choice;
      }
      if (choice != null && choice.tooLate()) {
        return choice;
      }
    }
    return first;
  }

  /**
   * Whether a target is so far ahead that nothing can be needed for it yet: several times what a
   * gentle braking takes. Should it need more, it is found too late, and the run goes back.
   */
  private boolean beyond(double metres, double mps) {
    double gentleM = mps * mps / (2 * settings.gentleMps2());
    return metres > settings.gentleBrakings() * gentleM + settings.beginsM();
  }

  /**
   * Where to brake for one target; null where the run may go on, or where that is behind the
   * earliest of the targets before it.
   */
  private @Nullable NextBraking brakingFor(
      LegStart start,
      List<Target> targets,
      int index,
      double end,
      FreeRun free,
      RunStates line,
      @Nullable NextBraking earliest) {
    Target target = targets.get(index);
    if (target.atM() < end - 2 * units.placeStepM()) {
      return null;
    }
    Braking braking = runIn.braking(target);
    double aim = runIn.aimM(line, target, braking);
    double from = start.state().atM();
    // Where the run may go on, a lower speed on the way is braked for by itself, and in time.
    List<Target> before = free.over() ? targets.subList(start.next(), index) : List.of();
    double limitM = rules.manner().limits().of(target);
    double byM = aboutM(limitM);
    double atEnd = runIn.margin(line, end, aim, before, braking, byM);
    if (atEnd >= 0) {
      return null;
    }
    if (!target.standsThere()) {
      NextBraking coast = coastFor(from, end, target, aim, index, free, line);
      if (coast != null) {
        return coast;
      }
    }
    List<Target> onTheWay = targets.subList(start.next(), index);
    DoubleUnaryOperator shortM = at -> runIn.margin(line, at, aim, onTheWay, braking, byM);
    if (earliest != null && shortM.applyAsDouble(earliest.atM()) > settings.jumpM()) {
      return null;
    }
    OptionalDouble last =
        new LastPlace(bench.settings().brake(), from, end, settings.toleranceM()).of(shortM, atEnd);
    if (last.isEmpty()) {
      return new NextBraking(index, aim, from, from, false, true, false, free, line);
    }
    runIn.approach(line, last.getAsDouble());
    double brakingM = Math.min(stepper.atM(), limitM);
    return new NextBraking(
        index, aim, last.getAsDouble(), brakingM, false, false, false, free, line);
  }

  /** A limit is a printed place, and what is searched for may come out a hair before it. */
  private double aboutM(double limitM) {
    return limitM + 2 * settings.toleranceM();
  }

  /** Whether shutting off early enough does without a brake before a reduction. */
  private @Nullable NextBraking coastFor(
      double from, double end, Target target, double aim, int index, FreeRun free, RunStates line) {
    if (aim <= from) {
      return null;
    }
    double under = assignment.policy().margins().underSpeed().metresPerSecond();
    double wanted = Math.max(target.speedMps() - under, settings.coastShare() * target.speedMps());
    double low = Math.max(from, end - longestCoastS() * settings.coastMps());
    double high = Math.min(end, aim);
    low = longestCoastFrom(line, low, high);
    double atLow = coastMargin(line, low, aim, wanted);
    if (atLow < 0) {
      return null;
    }
    double atHigh = coastMargin(line, high, aim, wanted);
    if (atHigh >= 0) {
      return null;
    }
    double x =
        Root.lastNotNegative(
            at -> coastMargin(line, at, aim, wanted),
            low,
            high,
            atLow,
            atHigh,
            settings.toleranceM());
    line.pickUp(stepper, x);
    boolean checking = stepper.demandPa() > 0;
    double startS = stepper.timeS();
    stepper.shutOff();
    StopReason ended = stepper.advance(until.clear().place(aim));
    if (checking || ended != StopReason.PLACE || stepper.timeS() - startS > longestCoastS()) {
      return null;
    }
    return new NextBraking(index, aim, x, x, true, false, false, free, line);
  }

  private double longestCoastS() {
    return assignment.policy().practice().power().longestCoast().seconds();
  }

  /**
   * From further back coasting would last too long; where nothing brakes, shutting off later leaves
   * the train faster everywhere behind.
   */
  private double longestCoastFrom(RunStates line, double low, double high) {
    line.pickUp(stepper, high);
    double longerAgo = line.lastBefore(stepper.timeS() - longestCoastS() - 1).atM();
    if (longerAgo < low || line.brakesFrom(low)) {
      return low;
    }
    line.pickUp(stepper, longerAgo);
    return stepper.pressurePa() == 0 ? longerAgo : low;
  }

  /** In m/s: how far below the wanted speed the train is at the aim when it coasts from here. */
  private double coastMargin(RunStates line, double x, double aim, double wanted) {
    line.pickUp(stepper, x);
    stepper.shutOff();
    StopReason ended = stepper.advance(until.clear().place(aim));
    return ended == StopReason.PLACE ? wanted - stepper.speedMps() : wanted;
  }

  /** Where power was taken for too short a time, or without need; NaN where all is well. */
  private double wastedPowerFrom(NextBraking choice, LegStart start, List<Target> targets) {
    List<FreeRun.Step> steps = choice.free().steps();
    double leastS = rules.run().leastPower().seconds();
    Target target = targets.get(choice.index());
    for (FreeRun.Step step : steps) {
      boolean on = step.command().takesPower();
      if (!on || step.held() || step.trigger().isStart()) {
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
              && at - choice.atM() < settings.jumpNearM()
              && runIn.margin(
                      choice.line(),
                      choice.atM(),
                      choice.aimM(),
                      targets.subList(start.next(), choice.index()),
                      runIn.braking(target),
                      aboutM(rules.manner().limits().of(target)))
                  > settings.jumpM();
      choice.line().pickUp(stepper, Math.max(choice.atM(), at));
      if (jump || (lasting && tooShort(step, leastS, choice))) {
        return at - Slack.JUST_BEFORE_M;
      }
    }
    return Double.NaN;
  }

  private boolean tooShort(FreeRun.Step on, double leastS, NextBraking choice) {
    double since = stepper.timeS() - on.after().timeS();
    boolean followed =
        choice.free().steps().stream()
            .filter(s -> s.command().isShutOff())
            .anyMatch(
                s -> s.after().timeS() > on.after().timeS() && s.after().atM() <= choice.atM());
    double place = assignment.path().printedAtOrBefore(choice.atM());
    return !followed && (since < leastS || place <= on.after().atM());
  }
}
