package gradepost.source.route;

import static gradepost.source.route.RouteKeys.FROM;
import static gradepost.source.route.RouteKeys.TO;

import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.CurveSpeed;
import gradepost.route.GradientPiece;
import gradepost.route.RunningLine;
import gradepost.route.SpotHeight;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Section;
import gradepost.units.Gradient;
import gradepost.units.Length;
import gradepost.units.Mileage;
import gradepost.units.QuantityKind;
import gradepost.units.UnitStyle;
import gradepost.yaml.Common;
import gradepost.yaml.HeightText;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Key tables of the line itself: sections, running lines, gradients, curves. */
public final class TrackTables {
  /** The names that a route gives its two directions. */
  record DirectionNames(String forward, String backward) {}

  static final Key<String> FORWARD =
      Key.required(
          "forward",
          Common.text("a word, such as Down"),
          "What trains are called that meet the sections in the order listed.");
  static final Key<String> BACKWARD =
      Key.required(
          "backward", Common.text("a word, such as Up"), "What trains the other way are called.");
  static final ObjectSchema<DirectionNames> DIRECTION_NAMES =
      ObjectSchema.of(
              "the names of the directions",
              List.of(FORWARD, BACKWARD),
              v -> new DirectionNames(v.get(FORWARD), v.get(BACKWARD)))
          .checked(TrackTables::twoNames);

  static final Scalar.Choice<UnitStyle> UNIT_STYLE = new Scalar.Choice<>(unitStyles());

  static final Key<String> SECTION_NAME =
      Common.name("What the lineside mileage belongs to; unique on the route.");
  static final Key<Mileage> SECTION_FROM =
      Key.required("from", PlaceKind.MILEAGE, "Mileage at its forward start.");
  static final Key<Mileage> SECTION_TO =
      Key.required(
          "to", PlaceKind.MILEAGE, "Mileage at its forward end; less than from where it falls.");
  static final ObjectSchema<Section> SECTION =
      ObjectSchema.of(
              "a section",
              List.of(SECTION_NAME, SECTION_FROM, SECTION_TO),
              v -> new Section(v.get(SECTION_NAME), v.get(SECTION_FROM), v.get(SECTION_TO)))
          .checked(TrackTables::sectionHasLength);

  static final ObjectSchema<Extent> EXTENT =
      ObjectSchema.of("a stretch", List.of(FROM, TO), RouteKeys::extent)
          .checked(RouteKeys::forwardOrder);
  static final Key<String> LINE_NAME =
      Common.name("The running line by its name at the lineside; unique on the route.");
  static final Key<Set<Direction>> SIGNALLED =
      Key.preset(
          "directions",
          new RouteWord.Directions(),
          RouteWord.Directions.EITHER,
          RouteWord.Directions.BOTH,
          "The directions for which trains are signalled on it.");
  static final Key<List<Extent>> EXTENTS =
      Key.preset(
          "extents",
          ListOf.some(EXTENT),
          List.of(),
          "the whole route",
          "The stretches on which the line exists.");
  static final ObjectSchema<RunningLine> LINE =
      ObjectSchema.of(
          "a running line",
          List.of(LINE_NAME, SIGNALLED, EXTENTS),
          v -> new RunningLine(v.get(LINE_NAME), v.get(EXTENTS), v.get(SIGNALLED)));

  static final Key<Gradient> SLOPE =
      Key.required(
          "gradient",
          Scalar.Quantity.of(QuantityKind.GRADIENT, "1 in 10 falling", "1 in 10 rising"),
          "The gradient as a train in the forward direction meets it.");
  public static final ObjectSchema<GradientPiece> GRADIENT =
      ObjectSchema.of(
              "a gradient",
              List.of(FROM, TO, SLOPE),
              v -> new GradientPiece(RouteKeys.extent(v), v.get(SLOPE)))
          .checked(RouteKeys::forwardOrder);

  private static final Length STANDARD_GAUGE = new Length(1.435);
  private static final Length NEXT_TO_STANDARD = new Length(0.010);
  private static final Length LEAST_HEAD = new Length(0.030);
  private static final Length MOST_HEAD = new Length(0.130);

  static final Key<Length> GAUGE =
      Key.preset(
          "gauge",
          Common.length("300 mm", "2 m"),
          STANDARD_GAUGE,
          "1435 mm",
          "Track gauge, between the inner faces of the rails.");
  static final Key<Length> RAIL_CENTRES =
      Key.preset(
          "rail-centres",
          Common.length("300 mm", "2200 mm"),
          CurveSpeed.STANDARD_RAIL_CENTRES,
          "1502 mm",
          "Distance between the centres of the rail heads, over which cant is measured. Needed if"
              + " the gauge is not standard.");

  static final Key<Hand> HAND =
      Key.required(
          "hand", Scalar.Choice.of(Hand.class), "The side to which it turns, seen forward.");
  static final Key<Length> RADIUS =
      Key.required("radius", Common.length("60 m", "100 km"), "Radius of the curve.");
  static final Key<Length> CANT =
      Key.preset(
          "cant",
          Common.length("0 mm", "200 mm"),
          new Length(0),
          "0 mm",
          "Height of the outer rail over the inner one.");
  static final Key<CheckRail> CHECK_RAIL =
      Key.preset(
          "check-rail",
          Scalar.Choice.of(CheckRail.class),
          CheckRail.NONE,
          "none",
          "Beside which running rail a check rail lies.");
  public static final ObjectSchema<Curve> CURVE =
      ObjectSchema.of(
              "a curve",
              List.of(FROM, TO, HAND, RADIUS, CANT, CHECK_RAIL),
              v ->
                  new Curve(
                      RouteKeys.extent(v),
                      v.get(HAND),
                      v.get(RADIUS),
                      v.get(CANT),
                      v.get(CHECK_RAIL)))
          .checked(RouteKeys::forwardOrder);

  static final Key<Double> HEIGHT_ABOVE =
      Key.required(
          "height",
          new HeightText(),
          "Height of the rail above a datum that is the same for all heights of the route.");
  static final ObjectSchema<SpotHeight> HEIGHT =
      ObjectSchema.of(
          "a height",
          List.of(RouteKeys.AT, HEIGHT_ABOVE),
          v -> new SpotHeight(v.get(RouteKeys.AT), v.get(HEIGHT_ABOVE)));

  private static Map<String, UnitStyle> unitStyles() {
    Map<String, UnitStyle> words = new LinkedHashMap<>();
    words.put("miles", UnitStyle.MILES);
    words.put("metric", UnitStyle.METRIC);
    return words;
  }

  private static void twoNames(Values v) {
    Common.whenBoth(
        v,
        FORWARD,
        BACKWARD,
        (forward, backward) -> {
          if (forward.equals(backward)) {
            v.error(BACKWARD, RouteMistakes.SAME_DIRECTION_NAMES);
          }
          for (Key<String> key : List.of(FORWARD, BACKWARD)) {
            if (v.get(key).equals(RouteWord.Directions.BOTH)) {
              v.error(key, RouteMistakes.DIRECTION_NAMED_BOTH);
            }
          }
        });
  }

  /** The distance between rail centres is not derived from the gauge, but the two must agree. */
  static void centresOfGauge(Values v) {
    if (!v.has(GAUGE)) {
      return;
    }
    Common.whenBoth(
        v,
        GAUGE,
        RAIL_CENTRES,
        (gauge, centres) -> {
          double fromStandard = Math.abs(gauge.metres() - STANDARD_GAUGE.metres());
          double heads = centres.metres() - gauge.metres();
          if (!v.has(RAIL_CENTRES) && fromStandard > NEXT_TO_STANDARD.metres()) {
            v.error(GAUGE, RouteMistakes.NO_RAIL_CENTRES);
          } else if (v.has(RAIL_CENTRES)
              && (heads < LEAST_HEAD.metres() || heads > MOST_HEAD.metres())) {
            v.error(RAIL_CENTRES, RouteMistakes.RAIL_CENTRES_OFF_GAUGE.with(heads));
          }
        });
  }

  private static void sectionHasLength(Values v) {
    Common.whenBoth(
        v,
        SECTION_FROM,
        SECTION_TO,
        (from, to) -> {
          if (Math.abs(from.metres() - to.metres()) < 1) {
            v.error(SECTION_TO, RouteMistakes.SECTION_TOO_SHORT);
          }
        });
  }

  private TrackTables() {}
}
