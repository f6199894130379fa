package gradepost.drive;

import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Works out each stretch of a leg, from one braking to the next, in several manners that all obey
 * the policy, and puts together those that need the fewest handle movements, then the least energy,
 * within the running time allowed over the fastest.
 *
 * <p>Every manner comes to the next target at the same place and speed; so the stretches can be
 * worked out one by one, and what their parts cost adds up. What was put together is then planned
 * and run again as a whole, and judged by that.
 */
final class LegChooser {
  /** So many of the best that were put together are tried as a whole. */
  private static final int MOST_TRIED = 5;

  /** The coasting of the best is made longer by so much where the time allows, seconds. */
  private static final double[] LONGER_S = {8, 4, 2};

  /** And shorter, where it is a little too slow. */
  private static final double[] SHORTER_S = {2, 4, 8};

  private final Assignment assignment;
  private final Bench bench;
  private final Ceiling ceiling;
  private final double startM;
  private final List<Target> targets;
  private final Manner usual;
  private final LegPlanner planner;

  /** From a stand at {@code startM} over the targets up to the stop that is the last of them. */
  LegChooser(
      Assignment assignment, Bench bench, Ceiling ceiling, double startM, List<Target> targets) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.startM = startM;
    this.targets = targets;
    this.usual = Manner.of(assignment.policy().run());
    DriverRules rules = new DriverRules(assignment, bench, ceiling, startM, usual);
    this.planner = new LegPlanner(assignment, bench, rules, new Places(assignment));
  }

  /**
   * One way of driving the leg, run again from its printed numbers.
   *
   * @param manners other than the usual one, by the index of the first target ahead
   * @param idleBrakings in which the brake is released again at once
   */
  record Way(Map<Integer, Manner> manners, LegPlanner.Leg leg, Rerun rerun, long idleBrakings) {
    boolean stands() {
      return !leg.stalled() && rerun.failures().isEmpty();
    }

    double timeS() {
      return rerun.timeS();
    }

    boolean within(double allowedS) {
      return stands() && timeS() <= allowedS;
    }

    /** No brake put on for nothing, fewer movements, then less energy. */
    boolean betterThan(Way other) {
      if (stands() != other.stands()) {
        return stands();
      }
      if (idleBrakings != other.idleBrakings) {
        return idleBrakings < other.idleBrakings;
      }
      int fewer = rerun.actions().size() - other.rerun.actions().size();
      return fewer != 0 ? fewer < 0 : rerun.energyJ() < other.rerun.energyJ();
    }
  }

  /**
   * The way that was taken, and the fastest one.
   *
   * @param spareS what is left of the allowance for the legs behind, seconds
   */
  record Chosen(Way way, Way fastest, double spareS) {}

  /**
   * @param spareS of the allowance, what the legs before did not use; negative where they took
   *     more: seconds
   */
  Chosen choose(double spareS) {
    Way own = way(Map.of(), usual);
    Way fast = way(Map.of(), Manner.of(fastest(usual.run())));
    Way fastest = fast.stands() && fast.timeS() < own.timeS() ? fast : own;
    double shareS = (1 + usual.run().timeAllowance()) * fastest.timeS() + spareS;
    double allowedS = own.stands() ? Math.max(own.timeS(), shareS) : shareS;
    Way taken = own;
    List<Mix> mixes =
        new Mixes(assignment, bench, ceiling, planner, targets, allowedS).of(startM, usual);
    for (Mix mix : mixes.subList(0, Math.min(mixes.size(), MOST_TRIED))) {
      Way way = inTime(way(mix.manners(), usual), allowedS);
      taken = way.within(allowedS) && way.betterThan(taken) ? way : taken;
    }
    taken = usingTime(taken, allowedS);
    taken = taken.stands() || !fast.stands() ? taken : fast;
    return new Chosen(taken, fastest, shareS - taken.timeS());
  }

  /** Coasts for a shorter time, stretch by stretch, where it takes too long. */
  private Way inTime(Way slow, double allowedS) {
    Way way = slow;
    for (double shorter : SHORTER_S) {
      for (int next : slow.manners().keySet()) {
        Manner manner = way.manners().getOrDefault(next, usual);
        boolean longer = manner.coastS() > usual.coastS();
        if (way.stands() && way.timeS() > allowedS && longer) {
          way = way(next, manner.coasting(manner.coastS() - shorter), way.manners());
        }
      }
    }
    return way;
  }

  /** Coasts for longer, stretch by stretch, where that is better and there is time for it. */
  private Way usingTime(Way best, double allowedS) {
    Way taken = best;
    for (double longer : LONGER_S) {
      for (int next = 0; next < targets.size(); next++) {
        Manner manner = taken.manners().getOrDefault(next, usual);
        Way way = way(next, manner.coasting(manner.coastS() + longer), taken.manners());
        taken = way.within(allowedS) && way.betterThan(taken) ? way : taken;
      }
    }
    return taken;
  }

  private Way way(int next, Manner manner, Map<Integer, Manner> others) {
    Map<Integer, Manner> manners = new HashMap<>(others);
    manners.put(next, manner);
    return way(manners, usual);
  }

  private Way way(Map<Integer, Manner> manners, Manner otherwise) {
    LegPlanner.Leg leg =
        planner.plan(startM, targets, next -> manners.getOrDefault(next, otherwise));
    Rerun rerun = new Rerun(assignment, bench, ceiling);
    List<Instruction> instructions = new ArrayList<>();
    leg.pieces().forEach(p -> instructions.addAll(p.instructions()));
    Map<Target, Integer> numbers = new HashMap<>();
    targets.forEach(t -> numbers.put(t, 0));
    rerun.run(startM, instructions, numbers);
    double unit = assignment.route().units().speedUnitMps();
    long idle = leg.pieces().stream().filter(p -> p.hardlyBrakes(unit)).count();
    return new Way(manners, leg, rerun, idle);
  }

  /** Close under the ceiling, and no coasting that only spares energy. */
  private RunRules fastest(RunRules rules) {
    double unit = assignment.route().units().speedUnitMps();
    return rules.with(new Speed(unit), new Speed(3 * unit), new Span(0));
  }
}
