package gradepost.drive.leg;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.IdleMovements;
import gradepost.drive.check.InstructionRun;
import gradepost.plan.Instruction;
import gradepost.policy.Practice;
import gradepost.policy.RunRules;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Works out a leg in several ways that all obey the policy: by its rules alone, as fast as they
 * allow, and by guides that are the least energy at several prices of time and of a handle
 * movement. Each is run again from its printed numbers, and judged by that.
 */
public final class LegChooser {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final double startM;
  private final List<Target> targets;
  private final DrivingStrategy usual;
  private final DriverRules rules;
  private final Places places;

  private final Set<DrivingStrategy> tried = new HashSet<>();

  /** Several prices have the same guide. */
  private final Map<ControlProfile, Way> byGuide = new HashMap<>();

  private @Nullable LegCosts costs;

  /** From a stand at {@code startM} over the targets up to the stop that is the last of them. */
  public LegChooser(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      double startM,
      List<Target> targets) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.startM = startM;
    this.targets = targets;
    this.usual = DrivingStrategy.of(assignment.policy().run());
    rules = new DriverRules(assignment, bench, ceiling, startM, usual);
    places = new Places(assignment);
  }

  /**
   * One way of driving the leg, run again from its printed numbers.
   *
   * @param idle movements for a moment, and stretches along which the train creeps
   * @param practice what a movement is worth
   */
  public record Way(
      DrivingStrategy manner,
      LegPlanner.Leg leg,
      InstructionRun rerun,
      long idle,
      Practice practice) {
    boolean stands() {
      return !leg.stalled() && rerun.failures().isEmpty();
    }

    /** How long the leg takes, seconds. */
    public double timeS() {
      return rerun.timeS();
    }

    /** A train that stands is none. */
    int movements() {
      return rerun.movements();
    }

    /** Whether it stands, with no more movements, and no more of those for a moment. */
    boolean asGoodAs(Way other) {
      return stands() && idle <= other.idle && movements() <= other.movements();
    }

    /**
     * No handle moved for nothing; then fewer movements, but for those that save more energy than a
     * movement is worth.
     */
    boolean betterThan(Way other) {
      if (stands() != other.stands()) {
        return stands();
      }
      if (idle != other.idle) {
        return idle < other.idle;
      }
      return dear() < other.dear();
    }

    /** Quicker, but not by movements for a moment that save hardly any time. */
    boolean quickerThan(Way other) {
      double savesS = practice.handles().movementSaves().seconds();
      return (stands() && !other.stands())
          || (stands() == other.stands()
              && timeS() + savesS * idle < other.timeS() + savesS * other.idle);
    }

    /** Logarithm of the energy, and as much more for each movement as it is worth. */
    private double dear() {
      return Math.log(rerun.energyJ()) + movements() * Math.log(1 + practice.power().movement());
    }
  }

  /** By the rules alone. */
  Way own() {
    return way(usual);
  }

  Way fastest() {
    return way(DrivingStrategy.of(fastest(usual.run())));
  }

  /** Ways near this one, in one thing different, not tried yet, with one movement more at most. */
  public List<Way> near(Way way) {
    PlannerSettings settings = bench.settings();
    double longerS = settings.choice().longerCoastS();
    double unit = assignment.route().units().speedUnitMps();
    List<DrivingStrategy> manners = new ArrayList<>();
    way.manner()
        .guide()
        .neighbours(unit, settings.grid().nearM())
        .forEach(guide -> manners.add(way.manner().by(guide)));
    for (double by : new double[] {-longerS, longerS}) {
      manners.add(way.manner().coasting(way.manner().coastS() + by));
    }
    List<DrivingStrategy> untried = manners.stream().filter(tried::add).toList();
    return untried.parallelStream()
        .flatMap(m -> planned(m, Optional.of(way)).stream())
        .filter(Way::stands)
        .toList();
  }

  /**
   * By the guide that costs least at these prices; empty where there is none, or it does not stand.
   *
   * @param timeW what a second is worth, watts for each kilogram
   * @param moveJ what a handle movement is worth, joules for each kilogram
   */
  public Optional<Way> guided(double timeW, double moveJ) {
    double kg = bench.plannedTrain().inertiaKg();
    double least = costs().solve(kg * timeW, kg * moveJ);
    if (least == Double.POSITIVE_INFINITY) {
      return Optional.empty();
    }
    return costs()
        .guide()
        .map(guide -> byGuide.computeIfAbsent(guide, g -> way(usual.by(g))))
        .filter(Way::stands);
  }

  private LegCosts costs() {
    if (costs == null) {
      LegGrid grid =
          new LegGrid(
              assignment, bench, rules, targets, startM, t -> Braking.of(assignment, bench, t));
      costs = new LegCosts(new LegTable(grid, new LegSteps(assignment, grid)));
    }
    return costs;
  }

  /** The leg as it is driven in this manner. */
  public Way way(DrivingStrategy manner) {
    return planned(manner, Optional.empty()).orElseThrow();
  }

  /** Worked out, and run again; empty where it has too many more movements than the one near it. */
  private Optional<Way> planned(DrivingStrategy manner, Optional<Way> near) {
    int mostMovements = near.map(way -> way.movements() + 1).orElse(Integer.MAX_VALUE);
    LegPlanner planner = new LegPlanner(assignment, bench, rules, places);
    LegPlanner.Leg leg =
        planner.plan(
            startM,
            targets,
            manner,
            near.map(way -> way.leg().alike(way.manner(), manner)).orElse(List.of()));
    List<Instruction> instructions = new ArrayList<>();
    leg.pieces().forEach(p -> instructions.addAll(p.instructions()));
    long movements = instructions.stream().filter(i -> !i.command().isStand()).count();
    if (movements > mostMovements) {
      return Optional.empty();
    }
    InstructionRun rerun = new InstructionRun(assignment, bench, ceiling);
    Map<Target, Integer> numbers = new HashMap<>();
    targets.forEach(t -> numbers.put(t, 0));
    rerun.run(startM, instructions, numbers);
    Practice practice = assignment.policy().practice();
    long idle =
        IdleMovements.count(rerun.actions(), IdleMovements.Least.of(assignment.policy()))
            + Creeping.count(rerun.points(), ceiling, practice);
    return Optional.of(new Way(manner, leg, rerun, idle, practice));
  }

  /** Close under the ceiling, and no coasting that only spares energy. */
  private RunRules fastest(RunRules rules) {
    double unit = assignment.route().units().speedUnitMps();
    return rules.with(new Speed(unit), new Speed(3 * unit), new Span(0));
  }
}
