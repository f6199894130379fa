package gradepost.told;

import gradepost.told.print.PrintedSpeed;
import java.util.List;
import java.util.Optional;

/**
 * What a train does that comes to a lower speed faster than planned.
 *
 * @param most how fast it may come, where it is not to brake
 * @param application where it is
 * @param orders of that braking
 */
public record PrintedFaster(
    Verdict verdict,
    Optional<PrintedSpeed> most,
    Optional<PrintedApplication> application,
    List<PrintedOrder> orders) {

  /** What is told. */
  public enum Verdict {
    /** It has to brake, at a place that is told. */
    BRAKES,
    /** It would be too fast, and no place is early enough. */
    NOWHERE,
    /** It would be faster than permissible, but not yet where it would have to brake. */
    OVER,
    /** It is not too fast. */
    NEVER
  }

  public PrintedFaster {
    orders = List.copyOf(orders);
  }
}
