package gradepost.route;

import gradepost.units.Speed;

/** One way through a junction, and the speed over its pointwork. */
public record JunctionRoute(String name, Speed speed, boolean diverging) {}
