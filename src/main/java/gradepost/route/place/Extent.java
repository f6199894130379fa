package gradepost.route.place;

/** A stretch of the route, from the end that {@code FORWARD} meets first. */
public record Extent(Location from, Location to) {}
