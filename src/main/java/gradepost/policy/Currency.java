package gradepost.policy;

/**
 * How long a signature stands.
 *
 * @param lapseMonths it lapses so many months after the last trip
 * @param refreshTrips trips with an instructor that bring it back
 * @param reviewMonths the first review is so many months after signing
 * @param leastTrips trips before signing
 */
public record Currency(int lapseMonths, int refreshTrips, int reviewMonths, Trips leastTrips) {
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
