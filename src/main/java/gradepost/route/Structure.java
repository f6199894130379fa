package gradepost.route;

import gradepost.route.place.Extent;

/** A thing that the line passes through, over, under or across. */
public record Structure(Kind kind, String name, Extent extent, String note) {

  /** What it is. */
  public enum Kind {
    TUNNEL,
    UNDERBRIDGE,
    OVERBRIDGE,
    VIADUCT,
    FOOTBRIDGE,
    SWING_BRIDGE,
    LEVEL_CROSSING,
    FOOT_CROSSING
  }
}
