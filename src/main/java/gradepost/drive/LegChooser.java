package gradepost.drive;

import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Works a leg out in several ways that all obey the policy, and takes the one with the fewest
 * handle movements, then the least energy, within the running time allowed over the fastest.
 */
final class LegChooser {
  /** Longer coasting before a braking point than the policy's least, seconds. */
  private static final double[] LONGER_COASTS_S = {12, 20, 32, 50};

  /** Power taken off and on lower in the band, in whole units of speed. */
  private static final int[] LOWER_BANDS = {4, 8, 13};

  private final Assignment assignment;
  private final Bench bench;
  private final Ceiling ceiling;
  private final Places places;

  LegChooser(Assignment assignment, Bench bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.places = new Places(assignment);
  }

  /** One way of driving the leg, run again from its printed numbers. */
  record Way(List<Piece> pieces, boolean stalled, Rerun rerun) {
    boolean stands() {
      return !stalled && rerun.failures().isEmpty();
    }

    double timeS() {
      return rerun.timeS();
    }

    /** Fewer movements first, then less energy. */
    boolean betterThan(Way other) {
      if (stands() != other.stands()) {
        return stands();
      }
      int fewer = rerun.actions().size() - other.rerun.actions().size();
      return fewer != 0 ? fewer < 0 : rerun.energyJ() < other.rerun.energyJ();
    }
  }

  /** The way that was taken, and the fastest one. */
  record Chosen(Way way, Way fastest) {}

  /** From a stand at {@code startM} over the targets up to the stop that is the last of them. */
  Chosen choose(double startM, List<Target> targets) {
    RunRules policy = assignment.policy().run();
    Way own = way(startM, targets, policy);
    Way fast = way(startM, targets, fastest(policy));
    Way fastest = fast.stands() && fast.timeS() < own.timeS() ? fast : own;
    double allowedS = (1 + policy.timeAllowance()) * fastest.timeS();
    Way taken = own;
    RunRules best = policy;
    for (double longer : LONGER_COASTS_S) {
      RunRules rules = coasting(policy, Math.max(longer, policy.coastBeforeBraking().seconds()));
      Way way = way(startM, targets, rules);
      if (allowed(way, allowedS) && way.betterThan(taken)) {
        taken = way;
        best = rules;
      }
    }
    for (int lower : LOWER_BANDS) {
      if (!usesBand(taken)) {
        break;
      }
      Way way = way(startM, targets, lowered(best, lower));
      if (allowed(way, allowedS) && way.betterThan(taken)) {
        taken = way;
      }
    }
    if (!taken.stands() && fast.stands()) {
      taken = fast;
    }
    return new Chosen(taken, fastest);
  }

  /** Whether the band under the ceiling is reached at all; else lowering it changes nothing. */
  private static boolean usesBand(Way way) {
    return way.rerun().actions().stream()
        .anyMatch(
            a ->
                a.trigger() instanceof Trigger.SpeedUpTo
                    || a.command() instanceof Command.Power
                        && a.trigger() instanceof Trigger.SpeedDownTo);
  }

  private static boolean allowed(Way way, double allowedS) {
    return way.stands() && way.timeS() <= allowedS;
  }

  private Way way(double startM, List<Target> targets, RunRules rules) {
    DriverRules driver = new DriverRules(assignment, bench, ceiling, startM, rules);
    LegPlanner leg = new LegPlanner(assignment, bench, driver, places);
    leg.plan(startM, targets);
    Rerun rerun = new Rerun(assignment, bench, ceiling);
    List<Instruction> instructions = new ArrayList<>();
    leg.pieces().forEach(p -> instructions.addAll(p.instructions()));
    Map<Target, Integer> numbers = new HashMap<>();
    targets.forEach(t -> numbers.put(t, 0));
    rerun.run(startM, instructions, numbers);
    return new Way(leg.pieces(), leg.stalled(), rerun);
  }

  private static RunRules coasting(RunRules rules, double seconds) {
    return rules.with(rules.offBelow(), rules.onBelow(), new Span(seconds));
  }

  private RunRules lowered(RunRules rules, int units) {
    double by = units * assignment.route().units().speedUnitMps();
    return rules.with(
        new Speed(rules.offBelow().metresPerSecond() + by),
        new Speed(rules.onBelow().metresPerSecond() + by),
        rules.coastBeforeBraking());
  }

  /** Close under the ceiling, and no coasting that only spares energy. */
  private RunRules fastest(RunRules rules) {
    double unit = assignment.route().units().speedUnitMps();
    return rules.with(new Speed(unit), new Speed(3 * unit), new Span(0));
  }
}
