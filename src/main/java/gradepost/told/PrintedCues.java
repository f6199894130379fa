package gradepost.told;

import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedTime;
import java.util.Optional;

/**
 * What a driver goes by at a braking point.
 *
 * @param computedOn how far past the landmark that anchors it the computed point lies
 * @param clock from the instruction before; empty where that tells nothing
 * @param backstop what says that it is too late
 */
public record PrintedCues(
    Seen seen, Optional<PrintedLength> computedOn, Optional<Clock> clock, Backstop backstop) {

  /**
   * By the clock.
   *
   * @param done what was done then, where another sheet tells it
   */
  public record Clock(PrintedTime after, Optional<Done> done) {}

  /**
   * What was done, and where.
   *
   * @param about whether the place is only about right
   */
  public record Done(PrintedCommand what, PrintedPlace where, boolean about) {}

  /**
   * What says that it is too late: a landmark, or else a time.
   *
   * @param name of the landmark
   * @param beyond how far it stands past the point
   */
  public record Backstop(
      Optional<String> name, Optional<PrintedLength> beyond, Optional<PrintedTime> after) {}
}
