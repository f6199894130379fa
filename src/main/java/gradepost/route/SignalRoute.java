package gradepost.route;

import gradepost.units.Speed;
import java.util.Optional;

/**
 * A route that a junction signal can show.
 *
 * @param leadsTo the line or platform beyond
 * @param indication what the driver sees (for example a position of the junction indicator)
 * @param speed over the diverging pointwork, where it is below the line's own
 */
public record SignalRoute(String leadsTo, String indication, Optional<Speed> speed) {}
