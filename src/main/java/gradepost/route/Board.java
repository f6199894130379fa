package gradepost.route;

import gradepost.route.place.Direction;
import gradepost.route.place.Location;

/**
 * A lineside board of a restriction.
 *
 * @param direction the direction that reads it
 */
public record Board(BoardKind kind, Location location, Direction direction) {}
