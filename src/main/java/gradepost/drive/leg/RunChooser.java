package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.PointLimits;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.TestRoom;
import gradepost.drive.grid.RunningTest;
import gradepost.plan.BrakeTest.NoRoom;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Chooses how a run is driven: for each leg the way that needs the fewest handle movements, then
 * the least energy, within the time allowed over the fastest. Each leg keeps its own time, so that
 * a restriction on one leaves the others as they are.
 */
public final class RunChooser {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final PlannerSettings.Choice settings;

  /** The last targets of legs on which no speed is held. */
  private final Set<Target> unheld;

  /** From the marks, by where they begin: the same whether a speed may be held or not. */
  private final Map<Double, List<Leg>> fromMarks;

  /**
   * The way to the next stop that was taken, the fastest one, and the time that is allowed.
   *
   * @param plain the way that is taken where no speed is held
   * @param held the one that is taken where a speed may be
   */
  private record Leg(
      List<Target> targets,
      PointLimits limits,
      LegTests tests,
      LegChooser.Way plain,
      LegChooser.Way held,
      LegChooser.Way fastest,
      double allowedS) {
    Plan.Cost fastestCost() {
      InstructionRun quick = fastest.rerun();
      return new Plan.Cost(quick.timeS(), quick.energyJ(), quick.movements(), quick.actions());
    }
  }

  /** For a run on which speeds may be held. */
  public RunChooser(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this(assignment, bench, ceiling, Set.of(), new HashMap<>());
  }

  private RunChooser(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      Set<Target> unheld,
      Map<Double, List<Leg>> fromMarks) {
    this.unheld = Set.copyOf(unheld);
    this.fromMarks = fromMarks;
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.settings = bench.settings().choice();
  }

  /** The same, where no speed is held on the legs to these stops. */
  public RunChooser without(Set<Target> stops) {
    return new RunChooser(assignment, bench, ceiling, stops, fromMarks);
  }

  private LegChooser.Way taken(Leg leg) {
    boolean plain = unheld.contains(leg.targets().get(leg.targets().size() - 1));
    return plain ? leg.plain() : leg.held();
  }

  /** From a stand over all targets, of which the last is a stop. */
  public ChosenRun choose(double startM, List<Target> targets) {
    List<DrivenLeg> driven = new ArrayList<>();
    double at = startM;
    for (Leg leg : fromMarks.computeIfAbsent(startM, at0 -> legs(at0, targets))) {
      DrivenLeg next = driven(leg, PointLimits.NONE, at);
      driven.add(next);
      if (next.way().leg().stalled()) {
        return chosen(driven, Optional.of(at), PointLimits.NONE);
      }
      at = next.stop().atM();
    }
    return chosen(driven, Optional.empty(), PointLimits.NONE);
  }

  private static ChosenRun chosen(
      List<DrivenLeg> driven, Optional<Double> stallsM, PointLimits limits) {
    List<ApproachSolution> pieces = driven.stream().flatMap(d -> d.told().stream()).toList();
    Plan.Cost fastest =
        driven.stream()
            .map(DrivenLeg::fastest)
            .reduce(new Plan.Cost(0, 0, 0, List.of()), Plan.Cost::and);
    return new ChosenRun(pieces, stallsM, fastest, driven, limits);
  }

  /**
   * The same run with brakes that are on by these places: each leg in the manner in which it is
   * driven. A limit with which a leg cannot be driven by the rules is left out; the run tells which
   * it keeps.
   */
  public ChosenRun within(PointLimits limits, ChosenRun run) {
    List<DrivenLeg> driven = new ArrayList<>();
    Map<Target, Double> kept = new HashMap<>();
    for (DrivenLeg leg : run.driven()) {
      DrivenLeg next = within(limits.among(leg.targets()), leg, leg.fromM());
      kept.putAll(next.limits().byM());
      driven.add(next);
    }
    return chosen(driven, run.stallsM(), new PointLimits(kept));
  }

  private DrivenLeg within(Map<Target, Double> own, DrivenLeg leg, double fromM) {
    PointLimits limits = new PointLimits(own);
    if (limits.equals(leg.limits())) {
      return leg;
    }
    LegChooser chooser = chooser(fromM, leg.targets(), PointLimits.NONE, leg.tests());
    LegChooser.Way all = chooser.way(leg.way().manner().within(limits.and(leg.points())));
    boolean good = (own.isEmpty() ? all.asGoodAs(leg.way()) : all.stands()) && chooser.holds(all);
    if (good && all.timeS() <= leg.allowedS()) {
      return new DrivenLeg(
          fromM, leg.targets(), all, limits, leg.allowedS(), leg.fastest(), leg.tests());
    }
    Leg noLater = leg(fromM, leg.targets(), limits.and(leg.points()));
    Leg again = taken(noLater).stands() ? noLater : leg(fromM, leg.targets(), limits);
    if (taken(again).stands() || own.isEmpty()) {
      return driven(again, limits, fromM);
    }
    Leg some = withSome(own, leg, fromM);
    return driven(some, some.limits(), fromM);
  }

  private DrivenLeg driven(Leg leg, PointLimits limits, double fromM) {
    return new DrivenLeg(
        fromM, leg.targets(), taken(leg), limits, leg.allowedS(), leg.fastestCost(), leg.tests());
  }

  /** The limits one after the other, without those with which the leg cannot be driven. */
  private Leg withSome(Map<Target, Double> own, DrivenLeg leg, double fromM) {
    Leg best = leg(fromM, leg.targets(), PointLimits.NONE);
    Map<Target, Double> some = new HashMap<>();
    for (Map.Entry<Target, Double> limit : own.entrySet()) {
      some.put(limit.getKey(), limit.getValue());
      Leg with = leg(fromM, leg.targets(), new PointLimits(some));
      if (taken(with).stands()) {
        best = with;
      } else {
        some.remove(limit.getKey());
      }
    }
    return best;
  }

  private List<Leg> legs(double startM, List<Target> targets) {
    List<Double> starts = new ArrayList<>();
    List<List<Target>> aheads = new ArrayList<>();
    int from = 0;
    double at = startM;
    for (int i = 0; i < targets.size(); i++) {
      if (targets.get(i).isStop()) {
        starts.add(at);
        aheads.add(targets.subList(from, i + 1));
        from = i + 1;
        at = targets.get(i).atM();
      }
    }
    return IntStream.range(0, starts.size())
        .parallel()
        .mapToObj(i -> leg(starts.get(i), aheads.get(i), PointLimits.NONE))
        .toList();
  }

  private LegChooser chooser(
      double startM, List<Target> targets, PointLimits limits, LegTests tests) {
    return new LegChooser(assignment, bench, ceiling, startM, targets, limits, tests.made());
  }

  /**
   * Which running brake tests have room, before anything is spared: by the rules alone or as fast
   * as they allow. Those that have none are left out one after the other, the first one first.
   */
  private LegTests tests(double startM, List<Target> targets, PointLimits limits) {
    double endM = targets.get(targets.size() - 1).atM();
    LegTests tests = new LegTests(RunningTest.of(assignment, bench, startM, endM), List.of());
    Optional<TestRoom.Missing> missing = Optional.empty();
    do {
      missing = missing(startM, targets, limits, tests);
      tests = missing.map(tests::without).orElse(tests);
    } while (missing.isPresent());
    return tests;
  }

  private Optional<TestRoom.Missing> missing(
      double startM, List<Target> targets, PointLimits limits, LegTests tests) {
    if (tests.made().isEmpty()) {
      return Optional.empty();
    }
    LegChooser with = chooser(startM, targets, limits, tests);
    List<List<TestRoom.Missing>> missing = List.of(with.own().missing(), with.fastest().missing());
    return missing.stream()
        .min(Comparator.comparingInt(List::size))
        .flatMap(m -> m.stream().findFirst());
  }

  /** With as many running brake tests as there is room for, and a way that stands with them. */
  private Leg leg(double startM, List<Target> targets, PointLimits limits) {
    LegTests tests = tests(startM, targets, limits);
    Leg leg = leg(startM, targets, limits, tests);
    while (!leg.plain().stands() && !tests.made().isEmpty()) {
      RunningTest first = tests.made().get(0);
      tests = tests.without(new TestRoom.Missing(first, new NoRoom(NoRoom.Reason.NO_WAY, 0)));
      leg = leg(startM, targets, limits, tests);
    }
    return leg;
  }

  private Leg leg(double startM, List<Target> targets, PointLimits limits, LegTests tests) {
    LegChooser chooser = chooser(startM, targets, limits, tests);
    List<LegChooser.Way> ways = new ArrayList<>();
    ways.add(chooser.own());
    ways.add(chooser.fastest());
    List<Double> moves = settings.movePricesJ();
    List<List<Optional<LegChooser.Way>>> priced = new ArrayList<>();
    for (double move : moves) {
      priced.add(settings.timePricesW().stream().map(time -> chooser.guided(time, move)).toList());
    }
    priced.forEach(all -> all.forEach(way -> way.ifPresent(ways::add)));
    LegChooser.Way fastest = ways.get(0);
    for (LegChooser.Way way : ways) {
      fastest = way.quickerThan(fastest) ? way : fastest;
    }
    double share = assignment.policy().run().timeAllowance();
    double allowedS = Math.max(fastest.timeS(), (1 + share) * fastest.timeS() - settings.slowerS());
    for (int move = 0; move < moves.size(); move++) {
      ways.addAll(between(chooser, moves.get(move), priced.get(move), allowedS));
    }
    LegChooser.Way best = LegImprover.best(ways.get(0), ways, allowedS);
    LegImprover improver =
        new LegImprover(
            chooser, bench.settings(), assignment.route().units().speedUnitMps(), allowedS);
    List<LegChooser.Way> left = new ArrayList<>(ways);
    List<LegChooser.Way> near = new ArrayList<>();
    for (int seed = 0; seed < settings.seeds() && !left.isEmpty(); seed++) {
      LegChooser.Way from = LegImprover.best(left.get(0), left, allowedS);
      left.removeIf(w -> w.movements() == from.movements());
      LegChooser.Way improved = improver.improved(from);
      near.add(improved);
      best = LegImprover.best(best, List.of(improved), allowedS);
    }
    if (!near.contains(best)) {
      near.add(best);
    }
    LegChooser.Way held =
        LegImprover.best(best, held(chooser, improver, near, best, allowedS), allowedS);
    return new Leg(targets, limits, tests, best, held, fastest, allowedS);
  }

  /**
   * The same ways with speeds held, and what is better near those; none that takes much more energy
   * than the one that is taken where no speed is held.
   */
  private List<LegChooser.Way> held(
      LegChooser chooser,
      LegImprover improver,
      List<LegChooser.Way> near,
      LegChooser.Way unheld,
      double allowedS) {
    List<LegChooser.Way> all = new ArrayList<>();
    for (LegChooser.Way way : near) {
      LegChooser.Way held = chooser.held(way, allowedS);
      if (!held.manner().holds().isEmpty()) {
        all.add(held);
        all.add(improver.improved(held));
      }
    }
    double mostJ = settings.holdEnergy() * unheld.rerun().energyJ();
    return all.stream().filter(w -> w.rerun().energyJ() <= mostJ && chooser.holds(w)).toList();
  }

  /**
   * Ways at prices of time between one that is too slow and one in time, ever nearer.
   *
   * @param priced the ways at the prices of time that are tried
   */
  private List<LegChooser.Way> between(
      LegChooser chooser, double moveJ, List<Optional<LegChooser.Way>> priced, double allowedS) {
    List<LegChooser.Way> ways = new ArrayList<>();
    List<Double> times = settings.timePricesW();
    double cheap = times.get(0);
    double dear = times.get(times.size() - 1);
    for (int i = 0; i < times.size(); i++) {
      double time = times.get(i);
      boolean inTime = inTime(priced.get(i), allowedS);
      dear = inTime ? Math.min(dear, time) : dear;
      cheap = !inTime && time < dear ? time : cheap;
    }
    for (int i = 0; i < settings.halvings(); i++) {
      double middle = Math.sqrt(cheap * dear);
      Optional<LegChooser.Way> way = chooser.guided(middle, moveJ);
      way.ifPresent(ways::add);
      dear = inTime(way, allowedS) ? middle : dear;
      cheap = inTime(way, allowedS) ? cheap : middle;
    }
    return ways;
  }

  private static boolean inTime(Optional<LegChooser.Way> way, double allowedS) {
    return way.isPresent() && way.get().timeS() <= allowedS;
  }
}
