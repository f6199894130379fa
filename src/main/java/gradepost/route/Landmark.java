package gradepost.route;

import gradepost.route.place.Applies;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.units.Length;

/**
 * Something by the line that a driver can tell from all else.
 *
 * @param night whether it serves at night
 * @param sighting from how far off it is seen
 */
public record Landmark(
    String name, Location location, Applies applies, Hand side, boolean night, Length sighting) {}
