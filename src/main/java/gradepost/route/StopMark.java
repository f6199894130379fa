package gradepost.route;

/**
 * Where the front of a train of so many cars stops.
 *
 * @param direction the direction of the trains that it serves
 */
public record StopMark(int cars, Location location, Direction direction) {}
