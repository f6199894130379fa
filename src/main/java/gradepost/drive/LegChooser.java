package gradepost.drive;

import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;

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

  /** Where the policy's own manner comes to nothing another may take so much longer. */
  private static final double LEAST_WHERE_IT_FAILS = 0.15;

  /** The coasting of the best is made longer by so much where the time allows, seconds. */
  private static final double[] LONGER_S = {8, 4, 2};

  /** And shorter, where it is a little too slow. */
  private static final double[] SHORTER_S = {2, 4, 8};

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
  record Way(LegPlanner.Leg leg, Rerun rerun) {
    boolean stands() {
      return !leg.stalled() && rerun.failures().isEmpty();
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

  /**
   * From a stand at {@code startM} over the targets up to the stop that is the last of them.
   *
   * @param spareS of the allowance, what the legs before did not use; negative where they took
   *     more: seconds
   */
  Chosen choose(double startM, List<Target> targets, double spareS) {
    RunRules policy = assignment.policy().run();
    Manner usual = Manner.of(policy);
    DriverRules rules = new DriverRules(assignment, bench, ceiling, startM, usual);
    LegPlanner planner = new LegPlanner(assignment, bench, rules, places);
    Way own = way(planner, startM, targets, i -> usual);
    Way fast = way(planner, startM, targets, i -> Manner.of(fastest(policy)));
    Way fastest = fast.stands() && fast.timeS() < own.timeS() ? fast : own;
    double allowedS =
        own.stands()
            ? Math.max(own.timeS(), allowed(fastest) + spareS)
            : (1 + Math.max(LEAST_WHERE_IT_FAILS, policy.timeAllowance())) * fastest.timeS();
    Way taken = own;
    Map<Integer, Manner> kept = Map.of();
    List<Mix> mixes =
        new Mixes(assignment, bench, ceiling, planner, targets, allowedS).of(startM, usual);
    for (Mix mix : mixes.subList(0, Math.min(mixes.size(), MOST_TRIED))) {
      Map<Integer, Manner> manners = new HashMap<>(mix.manners());
      Way way = way(planner, startM, targets, i -> manners.getOrDefault(i, usual));
      for (double shorter : SHORTER_S) {
        for (int next : mix.manners().keySet()) {
          Manner manner = manners.get(next);
          if (way.stands() && way.timeS() > allowedS && manner.coastS() > usual.coastS()) {
            manners.put(next, manner.coasting(manner.coastS() - shorter));
            way = way(planner, startM, targets, i -> manners.getOrDefault(i, usual));
          }
        }
      }
      if (way.stands() && way.timeS() <= allowedS && way.betterThan(taken)) {
        taken = way;
        kept = manners;
      }
    }
    for (double longer : LONGER_S) {
      for (int next = 0; next < targets.size(); next++) {
        Manner manner = kept.getOrDefault(next, usual);
        Map<Integer, Manner> manners = new HashMap<>(kept);
        manners.put(next, manner.coasting(manner.coastS() + longer));
        Way way = way(planner, startM, targets, i -> manners.getOrDefault(i, usual));
        if (way.stands() && way.timeS() <= allowedS && way.betterThan(taken)) {
          taken = way;
          kept = manners;
        }
      }
    }
    return new Chosen(taken.stands() || !fast.stands() ? taken : fast, fastest);
  }

  /** The running time allowed for a leg by itself, seconds. */
  double allowed(Way fastest) {
    return (1 + assignment.policy().run().timeAllowance()) * fastest.timeS();
  }

  private Way way(
      LegPlanner planner, double startM, List<Target> targets, IntFunction<Manner> manners) {
    LegPlanner.Leg leg = planner.plan(startM, targets, manners);
    Rerun rerun = new Rerun(assignment, bench, ceiling);
    List<Instruction> instructions = new ArrayList<>();
    leg.pieces().forEach(p -> instructions.addAll(p.instructions()));
    Map<Target, Integer> numbers = new HashMap<>();
    targets.forEach(t -> numbers.put(t, 0));
    rerun.run(startM, instructions, numbers);
    return new Way(leg, rerun);
  }

  /** Close under the ceiling, and no coasting that only spares energy. */
  private RunRules fastest(RunRules rules) {
    double unit = assignment.route().units().speedUnitMps();
    return rules.with(new Speed(unit), new Speed(3 * unit), new Span(0));
  }
}
