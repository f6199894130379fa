package gradepost.route;

import gradepost.route.place.Applies;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.units.Length;
import java.util.Optional;

/**
 * Something by the line that a driver can tell from all else.
 *
 * @param night whether it serves at night
 * @param sighting from how far off it is seen
 * @param picture the file that shows it, as the route names it
 */
public record Landmark(
    String name,
    Location location,
    Applies applies,
    Hand side,
    boolean night,
    Length sighting,
    Optional<String> picture) {

  /** One of which there is no picture. */
  public Landmark(
      String name, Location location, Applies applies, Hand side, boolean night, Length sighting) {
    this(name, location, applies, side, night, sighting, Optional.empty());
  }
}
