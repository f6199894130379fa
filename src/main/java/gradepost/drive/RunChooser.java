package gradepost.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Chooses how a run is driven: for each leg the way that needs the fewest handle movements, then
 * the least energy, within the time allowed over the fastest. Each leg keeps its own time, so that
 * a restriction on one leaves the others as they are.
 */
final class RunChooser {
  /** So often the ways near the one taken are looked at. */
  private static final int ROUNDS = 4;

  /** A way comes out slower by so much from where the train really stands, seconds. */
  private static final double SLOWER_S = 0.3;

  private final Assignment assignment;
  private final Bench bench;
  private final Ceiling ceiling;

  /**
   * @param stallsM where the train comes to a stand for want of power
   * @param fastest what the fastest run costs
   */
  record Chosen(List<Piece> pieces, Optional<Double> stallsM, Plan.Cost fastest) {}

  /** The way to the next stop that was taken, and the fastest one. */
  private record Leg(List<Target> targets, LegChooser.Way taken, LegChooser.Way fastest) {}

  RunChooser(Assignment assignment, Bench bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
  }

  /** From a stand over all targets, of which the last is a stop. */
  Chosen choose(double startM, List<Target> targets) {
    List<Piece> pieces = new ArrayList<>();
    Plan.Cost fastest = new Plan.Cost(0, 0, 0);
    double at = startM;
    for (Leg leg : legs(startM, targets)) {
      Rerun quick = leg.fastest().rerun();
      fastest =
          fastest.and(
              new Plan.Cost(quick.timeS(), quick.energyJ(), Planner.movements(quick.actions())));
      // From where the train really stands: a little short of the mark.
      LegChooser chooser = new LegChooser(assignment, bench, ceiling, at, leg.targets());
      LegChooser.Way way = chooser.way(leg.taken().manner());
      LegChooser.Way taken = way.stands() ? way : chooser.own();
      pieces.addAll(taken.leg().pieces());
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
      if (targets.get(i) instanceof Target.Stop) {
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
    List<LegChooser.Way> ways = chooser.ways();
    LegChooser.Way fastest = ways.get(0);
    for (LegChooser.Way way : ways) {
      fastest = way.timeS() < fastest.timeS() ? way : fastest;
    }
    double share = assignment.policy().run().timeAllowance();
    double allowedS = Math.max(fastest.timeS(), (1 + share) * fastest.timeS() - SLOWER_S);
    LegChooser.Way taken = best(fastest, ways, allowedS);
    for (int round = 0; round < ROUNDS; round++) {
      taken = best(taken, chooser.near(taken), allowedS);
    }
    return new Leg(targets, taken, fastest);
  }

  private static LegChooser.Way best(
      LegChooser.Way first, List<LegChooser.Way> others, double allowedS) {
    LegChooser.Way best = first;
    for (LegChooser.Way way : others) {
      best = way.timeS() <= allowedS && way.betterThan(best) ? way : best;
    }
    return best;
  }
}
