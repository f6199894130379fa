package gradepost.route;

/** A stretch known for poor rail adhesion, and when and why. */
public record LowAdhesionSite(String name, Extent extent, Applies applies, String note) {}
