package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.PointLimits;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.InstructionRun;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

  /**
   * A run that was chosen.
   *
   * @param stallsM where the train comes to a stand for want of power
   * @param fastest what the fastest run costs
   * @param driven its legs, in order
   * @param limits that it keeps
   */
  public record Chosen(
      List<ApproachSolution> pieces,
      Optional<Double> stallsM,
      Plan.Cost fastest,
      List<Driven> driven,
      PointLimits limits) {
    public Chosen {
      pieces = List.copyOf(pieces);
      driven = List.copyOf(driven);
    }
  }

  /**
   * A leg as it is driven.
   *
   * @param fromM where the train stands when it begins, distance run
   * @param limits that it keeps
   * @param allowedS the time that is allowed for it
   * @param fastest what the fastest way costs
   */
  public record Driven(
      double fromM,
      List<Target> targets,
      LegChooser.Way way,
      PointLimits limits,
      double allowedS,
      Plan.Cost fastest) {
    /** Its approaches, as they are told. */
    List<ApproachSolution> told() {
      return LegPlanner.told(way.leg());
    }

    /** Its own braking points: what moves one of them leaves none of the others later. */
    PointLimits points() {
      Map<Target, Double> points = new HashMap<>();
      told().forEach(p -> p.brakingM().ifPresent(m -> points.put(p.target(), m)));
      return new PointLimits(points);
    }
  }

  /** The way to the next stop that was taken, the fastest one, and the time that is allowed. */
  private record Leg(
      List<Target> targets,
      PointLimits limits,
      LegChooser.Way taken,
      LegChooser.Way fastest,
      double allowedS) {
    Plan.Cost fastestCost() {
      InstructionRun quick = fastest.rerun();
      return new Plan.Cost(quick.timeS(), quick.energyJ(), quick.movements());
    }
  }

  public RunChooser(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.settings = bench.settings().choice();
  }

  /** From a stand over all targets, of which the last is a stop. */
  public Chosen choose(double startM, List<Target> targets) {
    List<Driven> driven = new ArrayList<>();
    double at = startM;
    for (Leg leg : legs(startM, targets)) {
      // From where the train really stands: a little short of the mark.
      LegChooser chooser = new LegChooser(assignment, bench, ceiling, at, leg.targets());
      LegChooser.Way way = chooser.way(leg.taken().manner());
      LegChooser.Way taken =
          way.asGoodAs(leg.taken()) ? way : leg(at, leg.targets(), PointLimits.NONE).taken();
      Driven next =
          new Driven(at, leg.targets(), taken, PointLimits.NONE, leg.allowedS(), leg.fastestCost());
      driven.add(next);
      if (taken.leg().stalled()) {
        return chosen(driven, Optional.of(at), PointLimits.NONE);
      }
      at = endM(next);
    }
    return chosen(driven, Optional.empty(), PointLimits.NONE);
  }

  private static Chosen chosen(List<Driven> driven, Optional<Double> stallsM, PointLimits limits) {
    List<ApproachSolution> pieces = driven.stream().flatMap(d -> d.told().stream()).toList();
    Plan.Cost fastest =
        driven.stream().map(Driven::fastest).reduce(new Plan.Cost(0, 0, 0), Plan.Cost::and);
    return new Chosen(pieces, stallsM, fastest, driven, limits);
  }

  private static double endM(Driven leg) {
    List<ApproachSolution> told = leg.told();
    return told.get(told.size() - 1).endM();
  }

  /**
   * The same run with brakes that are on by these places: each leg in the manner in which it is
   * driven. A limit with which a leg cannot be driven by the rules is left out; the run tells which
   * it keeps.
   */
  public Chosen within(PointLimits limits, Chosen run) {
    List<Driven> driven = new ArrayList<>();
    Map<Target, Double> kept = new HashMap<>();
    for (Driven leg : run.driven()) {
      double at = driven.isEmpty() ? leg.fromM() : endM(driven.get(driven.size() - 1));
      Driven next = within(limits.among(leg.targets()), leg, at);
      kept.putAll(next.limits().byM());
      driven.add(next);
    }
    return chosen(driven, run.stallsM(), new PointLimits(kept));
  }

  private Driven within(Map<Target, Double> own, Driven leg, double fromM) {
    PointLimits limits = new PointLimits(own);
    if (limits.equals(leg.limits()) && fromM == leg.fromM()) {
      return leg;
    }
    LegChooser chooser = new LegChooser(assignment, bench, ceiling, fromM, leg.targets());
    LegChooser.Way all = chooser.way(leg.way().manner().within(limits.and(leg.points())));
    boolean good = own.isEmpty() ? all.asGoodAs(leg.way()) : all.stands();
    if (good && all.timeS() <= leg.allowedS()) {
      return new Driven(fromM, leg.targets(), all, limits, leg.allowedS(), leg.fastest());
    }
    Leg noLater = leg(fromM, leg.targets(), limits.and(leg.points()));
    Leg again = noLater.taken().stands() ? noLater : leg(fromM, leg.targets(), limits);
    if (again.taken().stands() || own.isEmpty()) {
      return driven(again, limits, fromM);
    }
    Leg some = withSome(own, leg, fromM);
    return driven(some, some.limits(), fromM);
  }

  private static Driven driven(Leg leg, PointLimits limits, double fromM) {
    return new Driven(fromM, leg.targets(), leg.taken(), limits, leg.allowedS(), leg.fastestCost());
  }

  /** The limits one after the other, without those with which the leg cannot be driven. */
  private Leg withSome(Map<Target, Double> own, Driven leg, double fromM) {
    Leg best = leg(fromM, leg.targets(), PointLimits.NONE);
    Map<Target, Double> some = new HashMap<>();
    for (Map.Entry<Target, Double> limit : own.entrySet()) {
      some.put(limit.getKey(), limit.getValue());
      Leg with = leg(fromM, leg.targets(), new PointLimits(some));
      if (with.taken().stands()) {
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

  private Leg leg(double startM, List<Target> targets, PointLimits limits) {
    LegChooser chooser = new LegChooser(assignment, bench, ceiling, startM, targets, limits);
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
    LegChooser.Way taken = LegImprover.best(ways.get(0), ways, allowedS);
    LegImprover improver =
        new LegImprover(
            chooser, bench.settings(), assignment.route().units().speedUnitMps(), allowedS);
    List<LegChooser.Way> left = new ArrayList<>(ways);
    for (int seed = 0; seed < settings.seeds() && !left.isEmpty(); seed++) {
      LegChooser.Way from = LegImprover.best(left.get(0), left, allowedS);
      left.removeIf(w -> w.movements() == from.movements());
      taken = LegImprover.best(taken, List.of(improver.improved(from)), allowedS);
    }
    return new Leg(targets, limits, taken, fastest, allowedS);
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
