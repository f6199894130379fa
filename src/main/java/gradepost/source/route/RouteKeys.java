package gradepost.source.route;

import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Location;
import gradepost.units.Speed;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ValueType;
import gradepost.yaml.Values;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Keys of places, directions and speeds that the tables of a route share. */
public final class RouteKeys {
  static final ValueType<Location> PLACE = new PlaceKind();
  static final ValueType<Speed> ROUTE_SPEED = Common.speed("1 km/h", "400 km/h").routeUnits();

  public static final Key<Location> FROM =
      Key.required("from", PLACE, "Where it begins, as a train in the forward direction meets it.");
  public static final Key<Location> TO =
      Key.required("to", PLACE, "Where it ends, as a train in the forward direction meets it.");
  static final Key<Location> AT = Key.required("at", PLACE, "Where it is.");
  public static final Key<Set<Direction>> DIRECTIONS =
      Key.preset(
          "directions",
          new RouteWord.Directions(),
          RouteWord.Directions.EITHER,
          RouteWord.Directions.BOTH,
          "The trains for which it stands: one of the route's own names for its directions, or both.");
  public static final Key<List<String>> LINES =
      Key.preset(
          "lines",
          ListOf.some(new RouteWord.Line()),
          List.of(),
          "every line",
          "The running lines on which it stands.");
  static final Key<Direction> DIRECTION =
      Key.required(
          "direction",
          new RouteWord.OneDirection(),
          "The trains for which it stands, by the route's own name for their direction.");
  static final Key<String> NOTE =
      Key.preset(
          "note", Common.prose("a note in words"), "", "", "Anything a driver should know of it.");
  public static final Key<Speed> SPEED =
      Key.required("speed", ROUTE_SPEED, "The permissible speed.");

  /** A file that shows a thing; it is read when the pack is. */
  static Key<String> picture(String description) {
    return Key.optional("picture", Common.text("the name of a PNG or JPEG file"), description);
  }

  static Extent extent(Values v) {
    return new Extent(v.get(FROM), v.get(TO));
  }

  static Applies applies(Values v) {
    return new Applies(v.get(DIRECTIONS), new LinkedHashSet<>(v.get(LINES)));
  }

  /** That a stretch is given in forward order and has a length. */
  static void forwardOrder(Values v) {
    RouteFrame frame = RouteFrame.of(v.in());
    if (frame.sections().isEmpty() || v.find(FROM).isEmpty() || v.find(TO).isEmpty()) {
      return;
    }
    double from = frame.metresAt(v.get(FROM));
    double to = frame.metresAt(v.get(TO));
    if (to <= from) {
      v.error(TO, to < from ? RouteMistakes.TO_BEFORE_FROM : RouteMistakes.NO_LENGTH);
    }
  }

  private RouteKeys() {}
}
