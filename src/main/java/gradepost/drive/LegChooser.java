package gradepost.drive;

import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Works out a leg in several ways that all obey the policy: by its rules alone, as fast as they
 * allow, and by guides that are the least energy at several prices of time and of a handle
 * movement. Each is run again from its printed numbers, and judged by that.
 */
final class LegChooser {
  /** A second is worth so many watts for each kilogram. */
  private static final double[] TIMES_W = {0.5, 1, 2, 3.5, 6, 11, 25, 100};

  /** A handle movement is worth so many joules for each kilogram. */
  private static final double[] MOVES_J = {3, 25};

  /** Coasting before a braking is tried longer by so much, seconds. */
  private static final double LONGER_S = 5;

  private static final double STEP_M = 50;
  private static final double STEP_MPS = 0.3;

  private final Assignment assignment;
  private final Bench bench;
  private final Ceiling ceiling;
  private final double startM;
  private final List<Target> targets;
  private final Manner usual;
  private final DriverRules rules;
  private final LegPlanner planner;
  private final Set<Manner> tried = new HashSet<>();

  /** From a stand at {@code startM} over the targets up to the stop that is the last of them. */
  LegChooser(
      Assignment assignment, Bench bench, Ceiling ceiling, double startM, List<Target> targets) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.startM = startM;
    this.targets = targets;
    this.usual = Manner.of(assignment.policy().run());
    rules = new DriverRules(assignment, bench, ceiling, startM, usual);
    this.planner = new LegPlanner(assignment, bench, rules, new Places(assignment));
  }

  /**
   * One way of driving the leg, run again from its printed numbers.
   *
   * @param idleBrakings in which the brake is released again at once
   */
  record Way(Manner manner, LegPlanner.Leg leg, Rerun rerun, long idleBrakings) {
    boolean stands() {
      return !leg.stalled() && rerun.failures().isEmpty();
    }

    double timeS() {
      return rerun.timeS();
    }

    int movements() {
      return rerun.actions().size();
    }

    /** No brake put on for nothing, fewer movements, then less energy. */
    boolean betterThan(Way other) {
      if (stands() != other.stands()) {
        return stands();
      }
      if (idleBrakings != other.idleBrakings) {
        return idleBrakings < other.idleBrakings;
      }
      int fewer = movements() - other.movements();
      return fewer != 0 ? fewer < 0 : rerun.energyJ() < other.rerun.energyJ();
    }
  }

  /** By the rules alone. */
  Way own() {
    return way(usual);
  }

  Way fastest() {
    return way(Manner.of(fastest(usual.run())));
  }

  /** Ways near one of these, in one thing different; those that stand. */
  List<Way> near(Way way) {
    double unit = assignment.route().units().speedUnitMps();
    List<Manner> manners = new ArrayList<>();
    way.manner().guide().neighbours(unit).forEach(guide -> manners.add(way.manner().by(guide)));
    for (double by : new double[] {-LONGER_S, LONGER_S}) {
      manners.add(way.manner().coasting(way.manner().coastS() + by));
    }
    return manners.stream().filter(tried::add).map(this::way).filter(Way::stands).toList();
  }

  /** All that stand; where none does, the one by the rules alone. */
  List<Way> ways() {
    List<Way> ways = new ArrayList<>(guided());
    ways.add(fastest());
    ways.add(own());
    List<Way> stand = ways.stream().filter(Way::stands).toList();
    return stand.isEmpty() ? List.of(own()) : stand;
  }

  private List<Way> guided() {
    Set<Guide> guides = new LinkedHashSet<>();
    Target stop = targets.get(targets.size() - 1);
    Braking braking = Braking.of(assignment, bench, stop);
    LegGrid grid =
        new LegGrid(
            assignment,
            bench,
            rules,
            targets,
            startM,
            stop.atM(),
            braking::heaviestPa,
            STEP_M,
            STEP_MPS);
    LegSteps steps =
        new LegSteps(
            grid,
            assignment.stock().traction().timePerNotch().seconds(),
            usual.run().leastPower().seconds(),
            usual.run().coastBeforeBraking().seconds());
    LegCosts costs = new LegCosts(new LegTable(grid, steps), 2 + braking.easeAtMps().length);
    double kg = bench.plannedTrain().inertiaKg();
    for (double move : MOVES_J) {
      for (double time : TIMES_W) {
        if (costs.priced(kg * time, kg * move) < Double.POSITIVE_INFINITY) {
          Guide guide = costs.guide();
          if (guide != null) {
            guides.add(guide);
          }
        }
      }
    }
    List<Way> ways = new ArrayList<>();
    for (Guide guide : guides) {
      ways.add(way(usual.by(guide)));
    }
    return ways;
  }

  Way way(Manner manner) {
    LegPlanner.Leg leg = planner.plan(startM, targets, manner);
    Rerun rerun = new Rerun(assignment, bench, ceiling);
    List<Instruction> instructions = new ArrayList<>();
    leg.pieces().forEach(p -> instructions.addAll(p.instructions()));
    Map<Target, Integer> numbers = new HashMap<>();
    targets.forEach(t -> numbers.put(t, 0));
    rerun.run(startM, instructions, numbers);
    double unit = assignment.route().units().speedUnitMps();
    long idle = leg.pieces().stream().filter(p -> p.hardlyBrakes(unit)).count();
    return new Way(manner, leg, rerun, idle);
  }

  /** Close under the ceiling, and no coasting that only spares energy. */
  private RunRules fastest(RunRules rules) {
    double unit = assignment.route().units().speedUnitMps();
    return rules.with(new Speed(unit), new Speed(3 * unit), new Span(0));
  }
}
