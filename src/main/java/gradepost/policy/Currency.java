package gradepost.policy;

import java.util.Optional;

/**
 * How long a signature stands.
 *
 * @param lapseMonths it lapses so many months after the last trip
 * @param refreshTrips trips with an instructor that bring it back
 * @param reviewMonths the first review is so many months after signing
 * @param leastTrips trips before signing
 * @param keepMonths the records of somebody who left are kept so many months; empty for ever
 */
public record Currency(
    int lapseMonths,
    int refreshTrips,
    int reviewMonths,
    Trips leastTrips,
    Optional<Integer> keepMonths) {
  /**
   * How many trips a learner makes before signing, at least.
   *
   * @param day by day
   * @param night by night
   * @param poorRail on damp or leaf-covered rail
   */
  public record Trips(int day, int night, int poorRail) {
    /** The operator asks for none in particular. */
    public static final Trips NONE = new Trips(0, 0, 0);
  }
}
