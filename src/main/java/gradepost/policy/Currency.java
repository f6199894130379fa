package gradepost.policy;

/**
 * How long a signature stands.
 *
 * @param lapseMonths it lapses so many months after the last trip
 * @param refreshTrips trips with an instructor that bring it back
 * @param reviewMonths the first review is so many months after signing
 */
public record Currency(int lapseMonths, int refreshTrips, int reviewMonths) {}
