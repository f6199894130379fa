package gradepost.route;

import gradepost.route.place.Applies;
import gradepost.route.place.Extent;

/** A stretch known for poor rail adhesion, and when and why. */
public record LowAdhesionSite(String name, Extent extent, Applies applies, String note) {}
