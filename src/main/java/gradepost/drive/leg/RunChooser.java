package gradepost.drive.leg;

import gradepost.drive.brake.PointLimits;
import gradepost.drive.brake.Recall;
import gradepost.drive.brake.TrainModels;
import gradepost.plan.Plan;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
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
  /** A way that is no more than this dearer than one without limits needs no search for another. */
  private static final double HARDLY_DEARER = 0.01;

  private final Assignment assignment;
  private final TrainModels bench;
  private final Recall<LegQuestion, LegAnswer> known;

  /** The last targets of legs on which no speed is held. */
  private final Set<Target> unheld;

  /** From the marks, by where they begin: the same whether a speed may be held or not. */
  private final Map<Double, List<DecidedLeg>> fromMarks;

  /**
   * For a run on which speeds may be held.
   *
   * @param known how legs were driven that may be among those of this run
   */
  public RunChooser(
      Assignment assignment, TrainModels bench, Recall<LegQuestion, LegAnswer> known) {
    this(assignment, bench, known, Set.of(), new HashMap<>());
  }

  private RunChooser(
      Assignment assignment,
      TrainModels bench,
      Recall<LegQuestion, LegAnswer> known,
      Set<Target> unheld,
      Map<Double, List<DecidedLeg>> fromMarks) {
    this.unheld = Set.copyOf(unheld);
    this.fromMarks = fromMarks;
    this.assignment = assignment;
    this.bench = bench;
    this.known = known;
  }

  /** The same, where no speed is held on the legs to these stops. */
  public RunChooser without(Set<Target> stops) {
    return new RunChooser(assignment, bench, known, stops, fromMarks);
  }

  private LegChooser.Way taken(DecidedLeg leg) {
    boolean plain = unheld.contains(leg.targets().get(leg.targets().size() - 1));
    return plain ? leg.plain() : leg.held();
  }

  /** From a stand over all targets, of which the last is a stop. */
  public ChosenRun choose(double startM, List<Target> targets) {
    List<DrivenLeg> driven = new ArrayList<>();
    double at = startM;
    for (DecidedLeg leg : fromMarks.computeIfAbsent(startM, at0 -> legs(at0, targets))) {
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
    LegDecider decider = decider(fromM, leg.targets());
    LegChooser chooser = decider.chooser(PointLimits.NONE, leg.tests());
    LegChooser.Way all = chooser.way(leg.way().manner().within(limits.and(leg.points())));
    boolean good = (own.isEmpty() ? all.asGoodAs(leg.way()) : all.stands()) && chooser.holds(all);
    if (good && all.timeS() <= leg.allowedS()) {
      return driven(all, limits, leg);
    }
    Optional<LegChooser.Way> near = near(leg, all, decider, chooser);
    if (near.filter(w -> hardlyWorse(w, leg.way())).isPresent()) {
      return driven(near.get(), limits, leg);
    }
    DecidedLeg noLater = decider.leg(limits.and(leg.points()));
    DecidedLeg again = taken(noLater).stands() ? noLater : decider.leg(limits);
    if (near.filter(w -> w.betterThan(taken(again))).isPresent()) {
      return driven(near.get(), limits, leg);
    }
    if (taken(again).stands() || own.isEmpty()) {
      return driven(again, limits, fromM);
    }
    DecidedLeg some = withSome(own, decider);
    return driven(some, some.limits(), fromM);
  }

  private static DrivenLeg driven(LegChooser.Way way, PointLimits limits, DrivenLeg leg) {
    return new DrivenLeg(
        leg.fromM(), leg.targets(), way, limits, leg.allowedS(), leg.fastest(), leg.tests());
  }

  /**
   * A way in time near one that the earlier points have made too slow; empty where there is none.
   */
  private static Optional<LegChooser.Way> near(
      DrivenLeg leg, LegChooser.Way slow, LegDecider decider, LegChooser chooser) {
    if (!slow.stands() || slow.timeS() <= leg.allowedS()) {
      return Optional.empty();
    }
    LegChooser.Way way = decider.improver(chooser, leg.allowedS()).improved(slow);
    boolean good = way.stands() && way.timeS() <= leg.allowedS() && chooser.holds(way);
    return good ? Optional.of(way) : Optional.empty();
  }

  /** Whether a search of the whole leg would hardly find one that is much better. */
  private static boolean hardlyWorse(LegChooser.Way way, LegChooser.Way than) {
    return way.asGoodAs(than) && way.dear() <= than.dear() + HARDLY_DEARER;
  }

  private DrivenLeg driven(DecidedLeg leg, PointLimits limits, double fromM) {
    return new DrivenLeg(
        fromM, leg.targets(), taken(leg), limits, leg.allowedS(), leg.fastestCost(), leg.tests());
  }

  /** The limits one after the other, without those with which the leg cannot be driven. */
  private DecidedLeg withSome(Map<Target, Double> own, LegDecider decider) {
    DecidedLeg best = decider.leg(PointLimits.NONE);
    Map<Target, Double> some = new HashMap<>();
    for (Map.Entry<Target, Double> limit : own.entrySet()) {
      some.put(limit.getKey(), limit.getValue());
      DecidedLeg with = decider.leg(new PointLimits(some));
      if (taken(with).stands()) {
        best = with;
      } else {
        some.remove(limit.getKey());
      }
    }
    return best;
  }

  private List<DecidedLeg> legs(double startM, List<Target> targets) {
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
        .mapToObj(i -> decider(starts.get(i), aheads.get(i)).leg(PointLimits.NONE))
        .toList();
  }

  private LegDecider decider(double startM, List<Target> targets) {
    return new LegDecider(assignment, bench, startM, targets, known);
  }
}
