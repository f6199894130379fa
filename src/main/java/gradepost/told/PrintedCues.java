package gradepost.told;

import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedTime;
import java.util.Optional;

/**
 * What a driver goes by at a braking point.
 *
 * @param seen what to count from, by day and at night or in fog
 * @param computedOn how far past the landmark that anchors it the computed point lies
 * @param backstop what says that it is too late
 */
public record PrintedCues(Seen seen, Optional<PrintedLength> computedOn, Backstop backstop) {

  /**
   * What says that it is too late: a landmark, or else a time.
   *
   * @param name of the landmark
   * @param beyond how far it stands past the point
   */
  public record Backstop(
      Optional<String> name, Optional<PrintedLength> beyond, Optional<PrintedTime> after) {}
}
