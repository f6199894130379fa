package gradepost.drive;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Puts a leg together from stretches, each worked out in several manners. */
final class Mixes {
  /** Coasting before a braking point, seconds: longer than the policy's least. */
  private static final double[] COASTS_S = {0, 12, 18, 26, 36, 50, 70};

  /** Power taken off and on lower in the band, as a share of its speeds. */
  private static final double[] LOWER = {0, 0.04, 0.08, 0.14, 0.22, 0.3};

  /** The stretches added up take longer or shorter than the whole by this share at most. */
  private static final double SUM_ERRS = 0.01;

  private final Assignment assignment;
  private final Bench bench;
  private final Ceiling ceiling;
  private final LegPlanner planner;
  private final List<Target> targets;
  private final double longestS;
  private final double unitMps;
  private final Map<Target, Integer> numbers = new HashMap<>();

  /** By the index of the next target. */
  private final List<List<Mix>> at = new ArrayList<>();

  /**
   * @param longestS what takes longer than this by more than the sum of parts may err is dropped
   */
  Mixes(
      Assignment assignment,
      Bench bench,
      Ceiling ceiling,
      LegPlanner planner,
      List<Target> targets,
      double longestS) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.planner = planner;
    this.targets = targets;
    this.longestS = (1 + SUM_ERRS) * longestS;
    this.unitMps = assignment.route().units().speedUnitMps();
    targets.forEach(t -> numbers.put(t, 0));
  }

  /** The best come first: fewest movements, then least energy. None is covered by another. */
  List<Mix> of(double startM, Manner usual) {
    for (int i = 0; i <= targets.size(); i++) {
      at.add(new ArrayList<>());
    }
    at.get(0).add(Mix.start(planner.start(startM), usual));
    for (int next = 0; next < targets.size(); next++) {
      Set<Mix> done = Collections.newSetFromMap(new IdentityHashMap<>());
      List<Mix> left = new ArrayList<>(at.get(next));
      while (!left.isEmpty()) {
        List<Mix> alike = left.stream().filter(left.get(0)::endsLike).toList();
        done.addAll(alike);
        extend(alike, usual);
        // Among what was added may be some that go back to before here.
        left = new ArrayList<>(at.get(next));
        left.removeIf(done::contains);
      }
    }
    List<Mix> all = at.get(targets.size());
    all.sort(Comparator.comparingInt(Mix::movements).thenComparingDouble(Mix::energyJ));
    return all;
  }

  /** Goes on from where these end, which is as good as one place and speed. */
  private void extend(List<Mix> alike, Manner usual) {
    LegStart start = alike.get(0).end();
    for (double coast : COASTS_S) {
      for (double lower : LOWER) {
        Manner manner = usual.coasting(coast).lowered(lower);
        LegPlanner.Trial trial = planner.trial(start, targets, manner);
        if (trial.tooLateFor().isPresent()) {
          int index = trial.tooLateFor().get();
          alike.stream()
              .map(Mix::before)
              .flatMap(mix -> Optional.ofNullable(mix).stream())
              .filter(mix -> mix.end().next() < index)
              .forEach(mix -> add(mix.towards(index)));
        }
        if (trial.stretch().isEmpty()) {
          break;
        }
        LegPlanner.Stretch stretch = trial.stretch().get();
        if (stretch.piece().found() && !stretch.piece().hardlyBrakes(unitMps)) {
          extend(alike, manner, start, stretch);
        }
        if (!usesBand(stretch)) {
          break;
        }
      }
    }
  }

  private void extend(List<Mix> alike, Manner manner, LegStart start, LegPlanner.Stretch stretch) {
    Rerun rerun = new Rerun(assignment, bench, ceiling);
    rerun.run(start.state(), stretch.piece().instructions(), numbers, stretch.piece().endM());
    if (rerun.failures().isEmpty()) {
      double seconds = rerun.timeS() - start.state().timeS();
      for (Mix mix : alike) {
        add(mix.and(manner, stretch.next(), rerun.actions().size(), seconds, rerun.energyJ()));
      }
    }
  }

  private void add(Mix mix) {
    List<Mix> others = at.get(mix.end().next());
    if (mix.timeS() <= longestS && others.stream().noneMatch(m -> m.covers(mix))) {
      others.removeIf(mix::covers);
      others.add(mix);
    }
  }

  /** Whether power was taken off or on by the band's speeds, so that a lower band differs. */
  private static boolean usesBand(LegPlanner.Stretch stretch) {
    return stretch.piece().instructions().stream()
        .anyMatch(
            i ->
                i.command() instanceof Command.ShutOff && i.trigger() instanceof Trigger.SpeedUpTo
                    || i.command() instanceof Command.Power
                        && i.trigger() instanceof Trigger.SpeedDownTo);
  }
}
