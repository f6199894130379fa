package gradepost.route;

import gradepost.route.place.Location;

/** A surveyed height of the rail, against which the gradients are closed. */
public record SpotHeight(Location location, double heightM) {}
