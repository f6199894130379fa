package gradepost.route;

import gradepost.route.place.Direction;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import java.util.List;
import java.util.Optional;

/**
 * A signal.
 *
 * @param id as plated
 * @param line the running line that it stands for
 * @param side of the line on which it stands, as the driver sees it to whom it shows
 * @param aws the AWS magnet before it; empty where there is none
 * @param picture the file that shows it, as the route names it
 */
public record Signal(
    String id,
    Kind kind,
    Location location,
    Direction direction,
    String line,
    Hand side,
    Optional<Location> aws,
    List<SignalRoute> routes,
    String note,
    Optional<String> picture) {

  /** What it can show. */
  public enum Kind {
    /** Can show danger. */
    STOP,
    /** Shows caution or clear, never danger. */
    DISTANT,
    /** Can show danger and caution for the next one. */
    STOP_AND_CAUTION,
    /** Repeats another that is seen late. */
    REPEATER;

    /** Whether it can show danger. */
    public boolean stops() {
      return this == STOP || this == STOP_AND_CAUTION;
    }
  }

  /** One on the left, of which there is no picture. */
  public Signal(
      String id,
      Kind kind,
      Location location,
      Direction direction,
      String line,
      Optional<Location> aws,
      List<SignalRoute> routes,
      String note) {
    this(id, kind, location, direction, line, Hand.LEFT, aws, routes, note, Optional.empty());
  }

  public Signal {
    routes = List.copyOf(routes);
  }
}
