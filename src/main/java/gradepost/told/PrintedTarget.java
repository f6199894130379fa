package gradepost.told;

import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.Optional;

/**
 * What an approach is driven to.
 *
 * @param key the same in every issue for the same target
 * @param name of the station, or what sets the speed
 * @param says the stop mark; empty for a lower speed
 * @param speed from there on; empty for a stop
 * @param from the permissible speed before it; empty for a stop
 * @param warning where the first board that warns of it stands
 * @param buffers how far beyond the mark the buffer stops are
 */
public record PrintedTarget(
    String key,
    String name,
    String says,
    PrintedPlace at,
    Optional<PrintedSpeed> speed,
    Optional<PrintedSpeed> from,
    Optional<PrintedPlace> warning,
    Optional<PrintedLength> buffers) {
  /** Whether it is a stop; else it is a lower speed. */
  public boolean isStop() {
    return speed.isEmpty();
  }
}
