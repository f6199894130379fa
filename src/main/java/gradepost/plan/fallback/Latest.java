package gradepost.plan.fallback;

import java.util.Optional;
import java.util.function.Function;

/** Where one brake must be asked for at the latest, or why there is no such place. */
public sealed interface Latest {

  /** One answer for each case. */
  <T> T match(Function<Point, T> point, Function<Nowhere, T> nowhere);

  /** The last place, where there is one. */
  default Optional<Point> point() {
    return match(Optional::of, nowhere -> Optional.empty());
  }

  /**
   * The last place.
   *
   * @param exactM as computed, distance run of the front
   * @param printedM the place on the print grid at or before it
   * @param speedMps planned speed there (without the overspeed allowance)
   * @param afterPlannedS running seconds from the planned braking point; negative when before it
   */
  record Point(double exactM, double printedM, double speedMps, double afterPlannedS)
      implements Latest {
    @Override
    public <T> T match(Function<Point, T> point, Function<Nowhere, T> nowhere) {
      return point.apply(this);
    }
  }

  /** No place on the run will do; the reason is for the reader. */
  record Nowhere(Reason reason) implements Latest {
    @Override
    public <T> T match(Function<Point, T> point, Function<Nowhere, T> nowhere) {
      return nowhere.apply(this);
    }
  }

  /** Why no place will do. */
  enum Reason {
    /** The gradient beats the brake. */
    GRADIENT_DEFEATS_BRAKE,
    /** Even from the start of the approach it is too late. */
    APPROACH_TOO_SHORT
  }
}
