package gradepost.route.station;

import java.util.List;
import java.util.Optional;

/**
 * A station.
 *
 * @param code the short name on charts, unique on the route
 * @param picture the file that shows it, as the route names it
 */
public record Station(
    String name, String code, List<Platform> platforms, Optional<String> picture) {
  /** One of which there is no picture. */
  public Station(String name, String code, List<Platform> platforms) {
    this(name, code, platforms, Optional.empty());
  }

  public Station {
    platforms = List.copyOf(platforms);
  }
}
