package gradepost.told;

import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedTime;
import java.util.Optional;

/**
 * What a driver can tell a place by: the nearest thing to see at or before it, and where that does
 * not serve at night or in fog, the nearest that does.
 */
public record Seen(Optional<Thing> day, Optional<Thing> night) {
  /** Nothing is near enough. */
  public static final Seen NOTHING = new Seen(Optional.empty(), Optional.empty());

  /** The train stands there: it needs nothing to see. */
  public static final Seen STANDING =
      new Seen(
          Optional.of(new Thing(Kind.STAND, "", Optional.empty(), Optional.empty())),
          Optional.empty());

  /**
   * One thing at the lineside.
   *
   * @param name of a landmark, a signal, a bridge or a platform
   * @param past how far past it the place lies; empty where that is next to nothing, and where the
   *     time is counted instead
   * @param count how long the train takes from there to the place, where that is to be counted
   */
  public record Thing(
      Kind kind, String name, Optional<PrintedLength> past, Optional<PrintedTime> count) {}

  /** What kind of thing. */
  public enum Kind {
    /** A landmark of the route. */
    LANDMARK,
    /** A signal. */
    SIGNAL,
    /** The AWS magnet of a signal: it is heard. */
    MAGNET,
    /** A bridge over the line. */
    BRIDGE,
    /** The ramp of a platform. */
    RAMP,
    /** The stand of the train itself, which has no name. */
    STAND
  }
}
