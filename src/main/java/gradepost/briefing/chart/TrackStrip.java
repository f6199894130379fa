package gradepost.briefing.chart;

import java.util.List;

/**
 * The track from one place to another: what is drawn under a chart. All distances in metres run.
 *
 * @param ticks lineside posts or round mileages, in the route's own units
 * @param slopes without gaps
 */
public record TrackStrip(
    double fromM,
    double toM,
    Names names,
    List<Tick> ticks,
    List<Slope> slopes,
    List<Bend> bends,
    List<Stretch> platforms,
    List<Sign> signs) {

  /** What its bands are called. */
  public record Names(String slopes, String bends, String line) {}

  /** A mark on the axis; a major one is labelled first. */
  public record Tick(double atM, String text, boolean major) {}

  /** One gradient, seen in the direction of travel; rising is positive. */
  public record Slope(double fromM, double toM, double permille, String text) {}

  /**
   * A curve.
   *
   * @param left whether it turns to the left in the direction of travel
   * @param checkLeft a check rail beside the left running rail
   */
  public record Bend(
      double fromM,
      double toM,
      boolean left,
      double radiusM,
      boolean checkLeft,
      boolean checkRight,
      String text) {}

  /** A stretch with a name; {@code left} tells on which side it lies. */
  public record Stretch(double fromM, double toM, String text, boolean left) {}

  /**
   * Something at a place.
   *
   * @param left whether a signal stands on the left
   */
  public record Sign(double atM, String text, Kind kind, boolean left) {
    public Sign(double atM, String text, Kind kind) {
      this(atM, text, kind, true);
    }
  }

  /** How a sign is drawn. */
  public enum Kind {
    SIGNAL,
    LANDMARK,
    BOARD,
    STRUCTURE,
    GAP,
    TARGET
  }

  public TrackStrip {
    ticks = List.copyOf(ticks);
    slopes = List.copyOf(slopes);
    bends = List.copyOf(bends);
    platforms = List.copyOf(platforms);
    signs = List.copyOf(signs);
    if (!(toM > fromM)) {
      throw new IllegalArgumentException("a strip has a length: " + fromM + " to " + toM);
    }
  }

  /** How long the strip is, metres. */
  public double lengthM() {
    return toM - fromM;
  }
}
