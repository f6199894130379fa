package gradepost.plan;

import java.util.Optional;

/**
 * Where the train comes to its target when the printed technique is carried out and nothing is
 * corrected: where it stands, or where its speed is down to the permissible one of the board.
 * Percentiles of how far short that is, metres, negative past the target; empty where that share of
 * the runs does not come to it on the track that is known.
 *
 * @param pastShare share of the runs that pass the target
 * @param notHeldShare of those that never come to it on the track that is known
 * @param corrected the same runs with a driver who corrects them
 */
public record Spread(
    Optional<Double> shortM05,
    Optional<Double> shortM10,
    Optional<Double> shortM50,
    Optional<Double> shortM95,
    double pastShare,
    double notHeldShare,
    int samples,
    Corrected corrected) {

  /**
   * Where the same runs come to their target when the driver corrects them; percentiles alike.
   *
   * @param lateShare share of the runs that are late: at a board over its speed, at a mark past it
   *     by more than the tolerance of a stop, at buffer stops against them
   * @param lateAtMost what that share is at most, with 95 % confidence
   * @param noneMayBeLate whether not one of them may be: before buffer stops, signals, check rails
   * @param fullShare share of the runs in which the driver applies full service
   */
  public record Corrected(
      Optional<Double> shortM05,
      Optional<Double> shortM50,
      Optional<Double> shortM95,
      double lateShare,
      double lateAtMost,
      boolean noneMayBeLate,
      double fullShare) {}
}
