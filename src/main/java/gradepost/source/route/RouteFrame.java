package gradepost.source.route;

import gradepost.route.LineHoles.Place;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.units.Parsed.Convention;
import gradepost.units.UnitStyle;
import gradepost.yaml.Reader;
import gradepost.yaml.Surroundings;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;

/**
 * What has to be known of a route before places on it can be read. Any part may be unknown, because
 * it was itself wrong or because no route is at hand; what hangs on it is then left unread, without
 * a second complaint.
 *
 * @param names of the two directions; empty where unknown
 * @param sections empty where unknown
 * @param lines names of the running lines; empty where unknown
 */
public record RouteFrame(
    Optional<UnitStyle> units,
    Map<Direction, String> names,
    List<Section> sections,
    List<String> lines)
    implements Surroundings {
  public static final RouteFrame UNKNOWN =
      new RouteFrame(Optional.empty(), Map.of(), List.of(), List.of());

  public RouteFrame {
    sections = List.copyOf(sections);
    lines = List.copyOf(lines);
  }

  /** What is known of the route in this reading. */
  static RouteFrame of(Reader in) {
    return in.surroundings() instanceof RouteFrame frame ? frame : UNKNOWN;
  }

  /** All that is known of a route that was read. */
  public static RouteFrame of(Route route) {
    return new RouteFrame(
        Optional.of(route.units()),
        names(route.forwardName(), route.backwardName()),
        route.sections(),
        route.lines().stream().map(RunningLine::name).toList());
  }

  static Map<Direction, String> names(String forward, String backward) {
    Map<Direction, String> names = new EnumMap<>(Direction.class);
    names.put(Direction.FORWARD, forward);
    names.put(Direction.BACKWARD, backward);
    return names;
  }

  RouteFrame withLines(List<String> known) {
    return new RouteFrame(units, names, sections, known);
  }

  /** Metres in the forward direction; only where the sections are known. */
  double metresAt(Location location) {
    return path().metresAt(location);
  }

  /** A stretch in the forward direction; only where the sections are known. */
  public Stretch span(Extent extent) {
    return path().span(extent);
  }

  double lengthM() {
    return path().lengthM();
  }

  /**
   * A distance as the lineside has it, with its section where the mileage is on two; only where the
   * sections are known.
   */
  public String text(double metres) {
    return path().text(metres);
  }

  /** A place so many metres along the route; only where the sections are known. */
  public Place place(double metres) {
    return Place.of(path(), metres);
  }

  /** The route's own name for a direction. */
  String nameOf(Direction direction) {
    return names.getOrDefault(direction, direction.name());
  }

  private Path path() {
    Route bare =
        new Route(
            "",
            "",
            units.orElse(UnitStyle.METRIC),
            "",
            "",
            "",
            sections,
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of());
    return new Path(bare, Direction.FORWARD);
  }

  /** Whether the route is written in this convention, as far as is known. */
  @Override
  public boolean has(Convention convention) {
    Convention own = own();
    return own == Convention.NEUTRAL || convention == Convention.NEUTRAL || own == convention;
  }

  private Convention own() {
    return units
        .map(u -> u == UnitStyle.MILES ? Convention.MILES : Convention.METRIC)
        .orElse(Convention.NEUTRAL);
  }

  /** Whether a text is in the units of the route; reports it where it is not. */
  @Override
  public boolean accepts(Convention convention, Node node, String label, Reader in) {
    if (has(convention)) {
      return true;
    }
    boolean miles = own() == Convention.MILES;
    in.error(
        node, (miles ? RouteMistakes.NOT_IN_MILES : RouteMistakes.NOT_IN_METRIC).with(label, node));
    return false;
  }
}
