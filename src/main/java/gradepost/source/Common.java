package gradepost.source;

import gradepost.route.Applies;
import gradepost.route.Direction;
import gradepost.route.Extent;
import gradepost.route.Location;
import gradepost.units.Length;
import gradepost.units.QuantityKind;
import gradepost.units.Speed;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Keys that many tables share. */
final class Common {
  static final Kind<Location> PLACE = new PlaceKind();
  static final Kind<Speed> ROUTE_SPEED = speed("1 km/h", "400 km/h").routeUnits();

  static final Key<Location> FROM =
      Key.required("from", PLACE, "Where it begins, as a train in the forward direction meets it.");
  static final Key<Location> TO =
      Key.required("to", PLACE, "Where it ends, as a train in the forward direction meets it.");
  static final Key<Location> AT = Key.required("at", PLACE, "Where it is.");
  static final Key<Set<Direction>> DIRECTIONS =
      Key.preset(
          "directions",
          new RouteWord.Directions(),
          RouteWord.Directions.EITHER,
          RouteWord.Directions.BOTH,
          "The trains for which it stands: one of the route's own names for its directions, or both.");
  static final Key<List<String>> LINES =
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
      Key.preset("note", prose("a note in words"), "", "", "Anything a driver should know of it.");
  static final Key<Speed> SPEED = Key.required("speed", ROUTE_SPEED, "The permissible speed.");

  static Key<FileKind> fileKind(FileKind kind) {
    return Key.required(
        "gradepost",
        new Scalar.Choice<>(java.util.Map.of(kind.word(), kind)),
        "The kind of file: " + kind.word() + ".");
  }

  static Key<String> name(String description) {
    return Key.required("name", text("a name"), description);
  }

  /** A name, or words that have to stand on one line. */
  static Scalar<String> text(String allowed) {
    return new Scalar.Text(allowed, false);
  }

  /** Sentences, which may be typed on several lines. */
  static Scalar<String> prose(String allowed) {
    return new Scalar.Text(allowed, true);
  }

  static Scalar.Quantity<Speed> speed(String least, String most) {
    return Scalar.Quantity.of(QuantityKind.SPEED, least, most);
  }

  static Scalar.Quantity<Length> length(String least, String most) {
    return Scalar.Quantity.of(QuantityKind.LENGTH, least, most);
  }

  static Extent extent(Values v) {
    return new Extent(v.get(FROM), v.get(TO));
  }

  static Applies applies(Values v) {
    return new Applies(v.get(DIRECTIONS), new LinkedHashSet<>(v.get(LINES)));
  }

  /** That a stretch is given in forward order and has a length. */
  static void forwardOrder(Values v) {
    RouteFrame frame = v.in().frame();
    if (frame.sections().isEmpty() || v.find(FROM).isEmpty() || v.find(TO).isEmpty()) {
      return;
    }
    double from = frame.metresAt(v.get(FROM));
    double to = frame.metresAt(v.get(TO));
    if (to <= from) {
      v.error(
          TO,
          to < from
              ? "to comes before from for a train in the forward direction"
              : "from and to are the same place",
          "from first, then to, in the order of the sections",
          to < from ? "exchange them" : "");
    }
  }

  /** The value of a check between two keys, when both were read. */
  static <A, B> void whenBoth(
      Values v, Key<A> first, Key<B> second, java.util.function.BiConsumer<A, B> check) {
    v.find(first).ifPresent(a -> v.find(second).ifPresent(b -> check.accept(a, b)));
  }

  private Common() {}
}
