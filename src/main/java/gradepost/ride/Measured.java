package gradepost.ride;

import java.util.Optional;

/**
 * A value that is known no better than within something.
 *
 * @param within the true value is no further away than this
 */
public record Measured(double value, double within) {
  /** As somebody wrote it down. */
  static Measured exactly(double value) {
    return new Measured(value, 0);
  }

  /**
   * Whether the true value lies between two bounds.
   *
   * @return empty where the one as well as the other may be
   */
  Optional<Boolean> between(double low, double high) {
    if (value - within >= low && value + within <= high) {
      return Optional.of(true);
    }
    boolean outside = value + within < low || value - within > high;
    return outside ? Optional.of(false) : Optional.empty();
  }

  /** The same for what is only a fault where it is certain. */
  boolean mayBeBetween(double low, double high) {
    return value + within >= low && value - within <= high;
  }
}
