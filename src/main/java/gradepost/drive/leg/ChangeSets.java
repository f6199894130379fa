package gradepost.drive.leg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which changes of a way are worth making together: by their effects, and apart from each other.
 */
final class ChangeSets {
  /** A price of time that moves no train, and one that nobody would pay, W. */
  private static final double CHEAP_W = 1e2;

  private static final double DEAR_W = 1e8;

  /** So often the price is halved between them, by its logarithm. */
  private static final int HALVINGS = 20;

  private final double energyJ;
  private final double movementJ;
  private final double spareS;

  /**
   * For a way as it is.
   *
   * @param energyJ that it takes at the wheel rim, J
   * @param movement what a movement of the handles is worth, as a share of that
   * @param spareS so much slower it may become, s; negative where it must become quicker
   */
  ChangeSets(double energyJ, double movement, double spareS) {
    this.energyJ = energyJ;
    this.movementJ = energyJ * Math.log1p(movement);
    this.spareS = spareS;
  }

  /**
   * Those that save most within the time; and, where all that save are too slow, those that are
   * worth while at the least price of time at which they are in time. One empty list where there
   * are none.
   */
  List<List<ChangeEffect>> of(List<ChangeEffect> effects) {
    List<List<ChangeEffect>> sets = new ArrayList<>();
    sets.add(chosen(effects, 0, spareS));
    if (seconds(chosen(effects, 0, Double.POSITIVE_INFINITY)) > spareS) {
      double cheap = CHEAP_W;
      double dear = DEAR_W;
      for (int i = 0; i < HALVINGS; i++) {
        double middle = Math.sqrt(cheap * dear);
        boolean inTime = seconds(chosen(effects, middle, Double.POSITIVE_INFINITY)) <= spareS;
        dear = inTime ? middle : dear;
        cheap = inTime ? cheap : middle;
      }
      List<ChangeEffect> priced = chosen(effects, dear, Double.POSITIVE_INFINITY);
      if (!priced.equals(sets.get(0))) {
        sets.add(priced);
      }
    }
    sets.removeIf(List::isEmpty);
    return sets.isEmpty() ? List.of(List.of()) : sets;
  }

  private static double seconds(List<ChangeEffect> effects) {
    return effects.stream().mapToDouble(ChangeEffect::seconds).sum();
  }

  /** Changes that lie apart, the most gainful first, that take no more than so many seconds. */
  private List<ChangeEffect> chosen(List<ChangeEffect> effects, double watts, double mostS) {
    Map<ChangeEffect, Double> gains = new HashMap<>();
    for (ChangeEffect e : effects) {
      double idleJ = e.idle() * energyJ;
      gains.put(e, -e.joules() - e.moves() * movementJ - watts * e.seconds() - idleJ);
    }
    List<ChangeEffect> chosen = new ArrayList<>();
    double left = mostS;
    for (ChangeEffect e :
        effects.stream()
            .filter(x -> gains.getOrDefault(x, 0.0) > 0)
            .sorted(Comparator.comparingDouble((ChangeEffect x) -> -gains.getOrDefault(x, 0.0)))
            .toList()) {
      if (e.seconds() <= left && chosen.stream().allMatch(e::apartFrom)) {
        chosen.add(e);
        left -= e.seconds();
      }
    }
    return chosen;
  }
}
