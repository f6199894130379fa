package gradepost.drive;

import java.util.Optional;

/**
 * Where a braking for a target comes to the target's speed, or why it does so nowhere on the known
 * track. How far the search looked is never given.
 */
public sealed interface Met {

  /**
   * On the track that is known.
   *
   * @param shortM metres short of the target; negative past it
   */
  record At(double shortM) implements Met {}

  /** Nowhere on the track that is known. */
  record Nowhere(Reason reason) implements Met {}

  /** Why it is nowhere. */
  enum Reason {
    /** The brake, fully on, does not slow the train: the fall is too steep. */
    GRADIENT_DEFEATS_BRAKE,
    /** The speed is dropping, but the route data end first. */
    TRACK_ENDS,
    /** The buffer stops come first. */
    BUFFER_STOPS
  }

  /** Metres short of the target; negative past it, empty where it is nowhere. */
  default Optional<Double> endsShortM() {
    return this instanceof At at ? Optional.of(at.shortM()) : Optional.empty();
  }

  /** Whether it is at or before the target. */
  default boolean inTime() {
    return endsShortM().filter(m -> m >= 0).isPresent();
  }
}
