package gradepost.ride;

import gradepost.policy.RecorderRules;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds at which stop marks a recorded run stood: the first stand is at the first mark, and every
 * later one may be at one of those behind it, or anywhere else (at a signal). Taken is what lets
 * the train have stopped at the most marks, and then what has the scale of the legs most alike: it
 * is one wheel that counts them all.
 */
final class RoadTie {
  /** Where a stop is to be made. */
  record Mark(String station, double atM) {}

  /** A mark at which the train stood. */
  record Pair(int mark, int stand) {}

  /** No wheel counts as wrongly as this: what does is another stand, or another road. */
  private static final double FAR_OFF = 0.10;

  /** A leg of another scale than the rest is as bad as one that is not there, by the square. */
  private static final double SHARP = 1e4;

  private final List<Mark> marks;
  private final double[] standsM;
  private final double[] slipsM;
  private final RecorderRules rules;

  /**
   * @param standsM what had been counted at each stand, rising
   * @param slipsM metres up to each stand along which the wheel may have slipped or slid
   */
  RoadTie(List<Mark> marks, double[] standsM, double[] slipsM, RecorderRules rules) {
    this.marks = List.copyOf(marks);
    this.standsM = standsM.clone();
    this.slipsM = slipsM.clone();
    this.rules = rules;
  }

  /** The marks at which the train stood, the first one always. */
  List<Pair> pairs() {
    List<Pair> first = pairs(1);
    return first.size() < 3 ? first : pairs(median(first));
  }

  /** How far the legs are from one scale: the mean difference, as a share. */
  static double unlike(List<Leg> legs) {
    if (legs.size() < 2) {
      return 0;
    }
    double middle = middle(legs.stream().mapToDouble(Leg::scale).toArray());
    return legs.stream().mapToDouble(l -> Math.abs(l.scale() - middle)).average().orElse(0);
  }

  static double middle(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
  }

  private double median(List<Pair> pairs) {
    double[] scales = new double[pairs.size() - 1];
    for (int i = 0; i < scales.length; i++) {
      scales[i] = scale(pairs.get(i), pairs.get(i + 1));
    }
    return middle(scales);
  }

  private double scale(Pair from, Pair to) {
    double road = marks.get(to.mark()).atM() - marks.get(from.mark()).atM();
    return road / (standsM[to.stand()] - standsM[from.stand()]);
  }

  /** Whether a leg may have this scale, with what the wheel may have slipped. */
  private boolean possible(Pair from, Pair to) {
    double counted = standsM[to.stand()] - standsM[from.stand()];
    double slips = slipsM[to.stand()] - slipsM[from.stand()];
    return counted > 0 && Math.abs(scale(from, to) - 1) <= FAR_OFF + rules.slip() * slips / counted;
  }

  private double unlike(Pair from, Pair to, double expected) {
    double off = scale(from, to) - expected;
    return SHARP * off * off;
  }

  /** A way up to a pair: how many marks it has, how unlike its legs are, and by which pair. */
  private record Way(Pair at, int marks, double unlike, Optional<Way> before) {
    static final Comparator<Way> BEST =
        Comparator.comparingInt(Way::marks)
            .thenComparing(Comparator.comparingDouble(Way::unlike).reversed());

    List<Pair> pairs() {
      List<Pair> all = new ArrayList<>();
      Optional<Way> way = Optional.of(this);
      while (way.isPresent()) {
        all.add(0, way.get().at());
        way = way.get().before();
      }
      return all;
    }
  }

  private List<Pair> pairs(double expected) {
    List<Way> ways = new ArrayList<>(List.of(new Way(new Pair(0, 0), 1, 0, Optional.empty())));
    for (int mark = 1; mark < marks.size(); mark++) {
      List<Way> here = new ArrayList<>();
      for (int stand = 1; stand < standsM.length; stand++) {
        Pair pair = new Pair(mark, stand);
        ways.stream()
            .filter(w -> w.at().stand() < pair.stand() && possible(w.at(), pair))
            .map(
                w ->
                    new Way(
                        pair,
                        w.marks() + 1,
                        w.unlike() + unlike(w.at(), pair, expected),
                        Optional.of(w)))
            .max(Way.BEST)
            .ifPresent(here::add);
      }
      ways.addAll(here);
    }
    return ways.stream().max(Way.BEST).orElseThrow().pairs();
  }
}
