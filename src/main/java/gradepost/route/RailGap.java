package gradepost.route;

/** A gap in the conductor rail, or a neutral section: coasted. */
public record RailGap(String name, Extent extent, Applies applies) {}
