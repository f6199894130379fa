package gradepost.drive.leg;

import gradepost.drive.brake.Band;
import gradepost.drive.brake.HoldLimits;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.HeldStretch;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.route.Path;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds where a run does the same again and again under one permissible speed: power and off, or a
 * check and its release. There the speed may be held as one instruction. What it finds is only
 * proposed: the leg is then worked out with it.
 */
final class HoldFinder {
  /** A band is no narrower than so many units of speed. */
  private static final int NARROWEST = 2;

  private final Assignment assignment;
  private final TrainModels models;
  private final Ceiling ceiling;
  private final HoldLimits limits;
  private final Band band;
  private final Path path;
  private final double unitMps;

  /**
   * @param band the policy's speeds under a ceiling: no wider is a band that is held
   */
  HoldFinder(Assignment assignment, TrainModels models, Ceiling ceiling, Band band) {
    this.assignment = assignment;
    this.band = band;
    this.models = models;
    this.ceiling = ceiling;
    this.limits = new HoldLimits(assignment, models);
    this.path = assignment.path();
    this.unitMps = assignment.path().units().speedUnitMps();
  }

  /**
   * Once on and off.
   *
   * @param before the action before it, by its place
   * @param on what begins it
   * @param top the last notch, or the heaviest check
   * @param last the last movement that is not off
   * @param off what ends it
   */
  private record Cycle(double before, Action on, Action top, Action last, Action off) {
    boolean braked() {
      return on.command().isBrake();
    }
  }

  /** Stretches along which a speed could be held, the longest first. */
  List<HeldStretch> of(List<Action> actions) {
    List<Cycle> cycles = cycles(actions);
    Set<HeldStretch> found = new LinkedHashSet<>();
    for (int many = cycles.size(); many >= 2; many--) {
      for (int i = 0; i + many <= cycles.size(); i++) {
        found.addAll(stretches(cycles.subList(i, i + many)));
      }
    }
    return List.copyOf(found);
  }

  /** Whether every hold of a run needs power, or the brake, more than once. */
  static boolean repeats(List<Action> made) {
    double untilM = Double.NEGATIVE_INFINITY;
    int times = 2;
    for (Action action : made) {
      Optional<Command.Hold> hold = action.command().hold();
      if (hold.isPresent()) {
        if (times < 2) {
          return false;
        }
        untilM = hold.get().untilM();
        times = 0;
      } else if (action.atM() < untilM - Slack.PLACE_M) {
        times += action.command().takesPower() || action.command().checksSpeed() ? 1 : 0;
      }
    }
    return times >= 2;
  }

  private static List<Cycle> cycles(List<Action> actions) {
    List<Cycle> cycles = new ArrayList<>();
    List<Action> on = new ArrayList<>();
    double before = Double.NEGATIVE_INFINITY;
    double last = Double.NEGATIVE_INFINITY;
    for (Action action : actions) {
      boolean begins = action.command().isPower() || action.command().checksSpeed();
      boolean ends = action.command().isShutOff() || action.command().isRelease();
      if (begins) {
        before = on.isEmpty() ? last : before;
        on.add(action);
      } else {
        if (ends && !on.isEmpty()) {
          cycles.add(cycle(before, on, action));
        }
        on.clear();
      }
      last = action.atM();
    }
    return cycles;
  }

  private static Cycle cycle(double before, List<Action> on, Action off) {
    Action top = on.get(0);
    for (Action action : on) {
      top = strength(action) > strength(top) ? action : top;
    }
    return new Cycle(before, on.get(0), top, on.get(on.size() - 1), off);
  }

  private static double strength(Action action) {
    Command command = action.command();
    return command.brake().map(Command.Brake::pressurePa).orElse(0.0)
        + command.power().map(p -> (double) p.notch()).orElse(0.0);
  }

  /** Where these, all alike and under one ceiling, can be told as one. */
  private List<HeldStretch> stretches(List<Cycle> cycles) {
    Cycle first = cycles.get(0);
    Cycle last = cycles.get(cycles.size() - 1);
    boolean alike = cycles.stream().allMatch(c -> c.braked() == first.braked());
    double beginsM = first.on().speedMps() > 0 ? first.on().atM() : first.off().atM();
    double permittedMps = ceiling.speedAt(beginsM);
    double sameToM = sameToM(beginsM);
    boolean eased = !first.braked() || models.service().gradualRelease();
    if (!alike || !eased || last.on().atM() > sameToM) {
      return List.of();
    }
    double lower =
        cycles.stream()
            .mapToDouble(c -> first.braked() ? c.off().speedMps() : c.on().speedMps())
            .filter(v -> v > 0)
            .min()
            .orElse(0);
    double upper =
        cycles.stream()
            .filter(c -> c.off().atM() <= sameToM)
            .mapToDouble(c -> first.braked() ? c.on().speedMps() : c.off().speedMps())
            .max()
            .orElse(0);
    double fromM = path.printedAtOrBefore(beginsM);
    if (fromM <= first.before() || first.on().speedMps() == 0) {
      fromM = path.printedAtOrAfter(beginsM);
    }
    List<HeldStretch> found = new ArrayList<>();
    for (double untilM : ends(last, sameToM)) {
      for (Command.HeldBy by : means(cycles)) {
        stretch(by, lower, upper, fromM, untilM, permittedMps).ifPresent(found::add);
      }
    }
    return found;
  }

  private Optional<HeldStretch> stretch(
      Command.HeldBy by, double lower, double upper, double fromM, double untilM, double ceiling) {
    double high = Math.rint(upper / unitMps) * unitMps;
    if (high < 3 * unitMps || untilM <= fromM) {
      return Optional.empty();
    }
    Command.Hold wanted = new Command.Hold(by, unitMps, high, untilM);
    double most = limits.topMps(wanted, fromM, ceiling);
    double top = Math.min(high, Math.floor(most / unitMps + Slack.UNITS) * unitMps);
    double wide =
        by.match(
            notch -> band.offMps(ceiling) - band.onMps(ceiling),
            brake -> band.checkFromMps(ceiling) - band.checkToMps(ceiling));
    double found = Math.floor(lower / unitMps + Slack.UNITS) * unitMps;
    double low = Math.max(found, top - Math.max(wide, NARROWEST * unitMps));
    return top < low + NARROWEST * unitMps - Slack.SPEED_MPS
        ? Optional.empty()
        : Optional.of(new HeldStretch(fromM, new Command.Hold(by, low, top, untilM)));
  }

  /** Where it may end: where the last of them is over, or the permissible speed rises. */
  private Set<Double> ends(Cycle last, double sameToM) {
    Set<Double> ends = new LinkedHashSet<>();
    if (last.off().atM() <= sameToM) {
      ends.add(path.printedAtOrAfter(last.off().atM()));
    } else {
      ends.add(path.printedAtOrAfter(sameToM));
      boolean higher = last.last().atM() > last.on().atM();
      if (higher && last.last().trigger().place().isPresent()) {
        ends.add(path.printedAtOrAfter(last.last().atM()));
      }
    }
    return ends;
  }

  private Set<Command.HeldBy> means(List<Cycle> cycles) {
    Set<Command.HeldBy> means = new LinkedHashSet<>();
    for (List<Cycle> some : List.of(cycles.subList(0, cycles.size() - 1), cycles)) {
      Action top = some.get(0).top();
      for (Cycle cycle : some) {
        top = strength(cycle.top()) > strength(top) ? cycle.top() : top;
      }
      means.add(
          top.command()
              .power()
              .<Command.HeldBy>map(
                  p -> new Command.InNotch(assignment.stock().traction().running(p.notch())))
              .orElse(new Command.WithBrake(strength(top))));
    }
    return means;
  }

  /** Up to where the permissible speed stays as it is here. */
  private double sameToM(double fromM) {
    double toM = ceiling.at(fromM).toM();
    double mps = ceiling.speedAt(fromM);
    while (toM < path.lengthM() && ceiling.speedAt(toM) == mps) {
      double next = ceiling.at(toM).toM();
      if (next <= toM) {
        break;
      }
      toM = next;
    }
    return toM;
  }
}
