package gradepost.route;

/** A surveyed height of the rail, against which the gradients are closed. */
public record SpotHeight(Location location, double heightM) {}
