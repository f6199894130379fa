package gradepost.plan.fallback;

import java.util.Optional;
import java.util.function.Function;

/**
 * Where a braking for a target comes to the target's speed, or why it does so nowhere on the known
 * track. How far the search looked is never given.
 */
public sealed interface Met {

  /** One answer for each case. */
  <T> T match(Function<At, T> at, Function<Nowhere, T> nowhere);

  /**
   * On the track that is known.
   *
   * @param shortM metres short of the target; negative past it
   */
  record At(double shortM) implements Met {
    @Override
    public <T> T match(Function<At, T> at, Function<Nowhere, T> nowhere) {
      return at.apply(this);
    }
  }

  /** Nowhere on the track that is known. */
  record Nowhere(Reason reason) implements Met {
    @Override
    public <T> T match(Function<At, T> at, Function<Nowhere, T> nowhere) {
      return nowhere.apply(this);
    }
  }

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
    return match(at -> Optional.of(at.shortM()), nowhere -> Optional.empty());
  }

  /** Whether it is at or before the target. */
  default boolean inTime() {
    return endsShortM().filter(m -> m >= 0).isPresent();
  }
}
