package gradepost.route.station;

import java.util.List;

/** A station; {@code code} is the short name on charts, unique on the route. */
public record Station(String name, String code, List<Platform> platforms) {
  public Station {
    platforms = List.copyOf(platforms);
  }
}
