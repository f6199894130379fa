package gradepost.route.station;

import gradepost.route.place.Direction;
import gradepost.route.place.Location;

/**
 * Where the front of a train of so many cars stops.
 *
 * @param direction the direction of the trains that it serves
 */
public record StopMark(int cars, Location location, Direction direction) {}
