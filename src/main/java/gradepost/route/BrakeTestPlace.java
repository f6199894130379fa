package gradepost.route;

import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.units.Speed;

/** Where a running brake test is made, and about how fast. */
public record BrakeTestPlace(Location location, Direction direction, Speed speed, String note) {}
