package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.InstructionRun;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
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
   */
  public record Chosen(
      List<ApproachSolution> pieces, Optional<Double> stallsM, Plan.Cost fastest) {}

  /** The way to the next stop that was taken, and the fastest one. */
  private record Leg(List<Target> targets, LegChooser.Way taken, LegChooser.Way fastest) {}

  public RunChooser(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.settings = bench.settings().choice();
  }

  /** From a stand over all targets, of which the last is a stop. */
  public Chosen choose(double startM, List<Target> targets) {
    List<ApproachSolution> pieces = new ArrayList<>();
    Plan.Cost fastest = new Plan.Cost(0, 0, 0);
    List<Leg> legs = legs(startM, targets);
    double at = startM;
    for (Leg leg : legs) {
      InstructionRun quick = leg.fastest().rerun();
      fastest = fastest.and(new Plan.Cost(quick.timeS(), quick.energyJ(), quick.movements()));
      // From where the train really stands: a little short of the mark.
      LegChooser chooser = new LegChooser(assignment, bench, ceiling, at, leg.targets());
      LegChooser.Way way = chooser.way(leg.taken().manner());
      LegChooser.Way taken = way.asGoodAs(leg.taken()) ? way : leg(at, leg.targets()).taken();
      pieces.addAll(LegPlanner.told(taken.leg()));
      if (taken.leg().stalled()) {
        return new Chosen(pieces, Optional.of(at), fastest);
      }
      at = pieces.get(pieces.size() - 1).endM();
    }
    return new Chosen(pieces, Optional.empty(), fastest);
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
        .mapToObj(i -> leg(starts.get(i), aheads.get(i)))
        .toList();
  }

  private Leg leg(double startM, List<Target> targets) {
    LegChooser chooser = new LegChooser(assignment, bench, ceiling, startM, targets);
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
    return new Leg(targets, taken, fastest);
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
