package gradepost.drive.leg;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.PointLimits;
import gradepost.drive.brake.Recall;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.TestRoom;
import gradepost.drive.grid.RunningTest;
import gradepost.plan.BrakeTest.NoRoom;
import gradepost.route.Stretch;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Chooses how one leg is driven: the way that needs the fewest handle movements, then the least
 * energy, within the time allowed over the fastest. It knows nothing of the road but what lies
 * along the leg, so that what is new elsewhere can make no difference; and what was chosen before
 * on the same road is chosen again without a search.
 */
final class LegDecider {
  /** So much of the road beside the leg counts as met on it, m. */
  private static final double BESIDE_M = 300;

  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final double startM;
  private final List<Target> targets;
  private final Recall<LegQuestion, LegAnswer> known;
  private final PlannerSettings.Choice settings;

  /**
   * @param whole the run that the leg is a part of
   * @param on the train on the whole road
   * @param startM where the leg begins, from a stand
   * @param targets of the leg; the last is the stop
   * @param known what was chosen before
   */
  LegDecider(
      Assignment whole,
      TrainModels on,
      double startM,
      List<Target> targets,
      Recall<LegQuestion, LegAnswer> known) {
    double behindM = whole.formation().lengthM() + BESIDE_M;
    double endM = targets.get(targets.size() - 1).atM();
    this.assignment = whole.along(new Stretch(startM - behindM, endM + BESIDE_M));
    this.bench = on.on(assignment);
    this.ceiling = Ceiling.of(assignment);
    this.startM = startM;
    this.targets = List.copyOf(targets);
    this.known = known;
    this.settings = bench.settings().choice();
  }

  /** Works the leg out in one manner or another. */
  LegChooser chooser(PointLimits limits, LegTests tests) {
    return new LegChooser(assignment, bench, ceiling, startM, targets, limits, tests.made());
  }

  /** Goes from a way of such a chooser to better ones near by. */
  LegImprover improver(LegChooser chooser, double allowedS) {
    double unitMps = assignment.route().units().speedUnitMps();
    return new LegImprover(chooser, bench.settings(), unitMps, allowedS);
  }

  /** With as many running brake tests as there is room for, and a way that stands with them. */
  DecidedLeg leg(PointLimits limits) {
    LegQuestion question = new LegQuestion(assignment, bench.settings(), startM, targets, limits);
    Optional<LegAnswer> before = known.of(question);
    if (before.isPresent()) {
      return again(before.get(), limits);
    }
    DecidedLeg decided = decided(limits);
    known.keep(question, LegAnswer.of(decided));
    return decided;
  }

  /** What was chosen before is worked out again; the search is left out. */
  private DecidedLeg again(LegAnswer answer, PointLimits limits) {
    LegChooser chooser = chooser(limits, answer.tests());
    LegChooser.Way plain = chooser.way(answer.plain());
    LegChooser.Way held = answer.held().equals(answer.plain()) ? plain : chooser.way(answer.held());
    LegChooser.Way fastest =
        answer.fastest().equals(answer.plain()) ? plain : chooser.way(answer.fastest());
    return new DecidedLeg(targets, limits, answer.tests(), plain, held, fastest, answer.allowedS());
  }

  /**
   * Which running brake tests have room, before anything is spared: by the rules alone or as fast
   * as they allow. Those that have none are left out one after the other, the first one first.
   */
  private LegTests tests(PointLimits limits) {
    double endM = targets.get(targets.size() - 1).atM();
    LegTests tests = new LegTests(RunningTest.of(assignment, bench, startM, endM), List.of());
    Optional<TestRoom.Missing> missing = Optional.empty();
    do {
      missing = missing(limits, tests);
      tests = missing.map(tests::without).orElse(tests);
    } while (missing.isPresent());
    return tests;
  }

  private Optional<TestRoom.Missing> missing(PointLimits limits, LegTests tests) {
    if (tests.made().isEmpty()) {
      return Optional.empty();
    }
    LegChooser with = chooser(limits, tests);
    List<List<TestRoom.Missing>> missing = List.of(with.own().missing(), with.fastest().missing());
    return missing.stream()
        .min(Comparator.comparingInt(List::size))
        .flatMap(m -> m.stream().findFirst());
  }

  private DecidedLeg decided(PointLimits limits) {
    LegTests tests = tests(limits);
    DecidedLeg leg = decided(limits, tests);
    while (!leg.plain().stands() && !tests.made().isEmpty()) {
      RunningTest first = tests.made().get(0);
      tests = tests.without(new TestRoom.Missing(first, new NoRoom(NoRoom.Reason.NO_WAY, 0)));
      leg = decided(limits, tests);
    }
    return leg;
  }

  private DecidedLeg decided(PointLimits limits, LegTests tests) {
    LegChooser chooser = chooser(limits, tests);
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
    LegImprover improver = improver(chooser, allowedS);
    List<LegChooser.Way> near = new ArrayList<>();
    Promising promising = new Promising(ways, settings, allowedS);
    Optional<LegChooser.Way> from = promising.next(best);
    while (from.isPresent()) {
      LegChooser.Way improved = improver.improved(from.get());
      near.add(improved);
      best = LegImprover.best(best, List.of(improved), allowedS);
      from = promising.next(best);
    }
    if (!near.contains(best)) {
      near.add(best);
    }
    LegChooser.Way held =
        LegImprover.best(best, held(chooser, improver, near, best, allowedS), allowedS);
    return new DecidedLeg(targets, limits, tests, best, held, fastest, allowedS);
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
    all.removeIf(w -> !chooser.holds(w));
    double unheldJ = unheld.rerun().energyJ();
    List<LegChooser.Way> hardlyMore = within(settings.runHoldEnergy() * unheldJ, all);
    return hardlyMore.isEmpty() ? within(settings.holdEnergy() * unheldJ, all) : hardlyMore;
  }

  private static List<LegChooser.Way> within(double mostJ, List<LegChooser.Way> ways) {
    return ways.stream().filter(w -> w.rerun().energyJ() <= mostJ).toList();
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
