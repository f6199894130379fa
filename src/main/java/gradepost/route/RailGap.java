package gradepost.route;

import gradepost.route.place.Applies;
import gradepost.route.place.Extent;

/** A gap in the conductor rail, or a neutral section: coasted. */
public record RailGap(String name, Extent extent, Applies applies) {}
