package gradepost.drive;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Manners put together for the first stretches of a leg, and what they cost together.
 *
 * @param before the stretches before the last one; null at the start of the leg
 * @param last manner of the last stretch
 * @param end where the next stretch begins
 */
record Mix(
    @Nullable Mix before, Manner last, LegStart end, int movements, double timeS, double energyJ) {
  /** As good as the same state, for working out what follows: m/s, and metres. */
  private static final double SAME_MPS = 0.4;

  private static final double SAME_M = 15;

  static Mix start(LegStart start, Manner usual) {
    return new Mix(null, usual, start, 0, 0, 0);
  }

  Mix and(Manner manner, LegStart next, int moreMovements, double moreS, double moreJ) {
    return new Mix(this, manner, next, movements + moreMovements, timeS + moreS, energyJ + moreJ);
  }

  /**
   * The same with the next target left for the one behind it, which has to be braked for sooner.
   */
  Mix towards(int next) {
    return new Mix(before, last, end.towards(next), movements, timeS, energyJ);
  }

  /** By the index of the first target ahead. */
  Map<Integer, Manner> manners() {
    Map<Integer, Manner> all = new HashMap<>();
    for (Mix mix = this; mix.before != null; mix = mix.before) {
      all.put(mix.before.end.next(), mix.last);
    }
    return all;
  }

  boolean endsLike(Mix other) {
    return Math.abs(end.state().speedMps() - other.end.state().speedMps()) < SAME_MPS
        && Math.abs(end.state().atM() - other.end.state().atM()) < SAME_M;
  }

  /** Whether the other one ends alike and is no better in anything. */
  boolean covers(Mix other) {
    return endsLike(other)
        && movements <= other.movements
        && timeS <= other.timeS
        && energyJ <= other.energyJ;
  }
}
