package gradepost.source.route;

import static gradepost.source.route.RouteKeys.AT;
import static gradepost.source.route.RouteKeys.DIRECTION;
import static gradepost.source.route.RouteKeys.DIRECTIONS;
import static gradepost.source.route.RouteKeys.FROM;
import static gradepost.source.route.RouteKeys.LINES;
import static gradepost.source.route.RouteKeys.NOTE;
import static gradepost.source.route.RouteKeys.TO;

import gradepost.route.BrakeTestPlace;
import gradepost.route.Landmark;
import gradepost.route.LowAdhesionSite;
import gradepost.route.Observation;
import gradepost.route.RailGap;
import gradepost.route.Signal;
import gradepost.route.SignalRoute;
import gradepost.route.Structure;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.units.Length;
import gradepost.units.Speed;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import java.util.List;

/** Key tables of what stands by the line: signals, landmarks, structures and the like. */
public final class LinesideTables {
  static final Key<String> LEADS_TO =
      Key.required("leads-to", Common.text("a line or platform"), "The line or platform beyond.");
  static final Key<String> INDICATION =
      Key.required("indication", Common.text("an indication"), "What the driver sees for it.");
  static final Key<Speed> ROUTE_SPEED =
      Key.optional(
          "speed",
          RouteKeys.ROUTE_SPEED,
          "Speed over the points, where it is below the line's own.");
  static final ObjectSchema<SignalRoute> SIGNAL_ROUTE =
      ObjectSchema.of(
          "a route of a signal",
          List.of(LEADS_TO, INDICATION, ROUTE_SPEED),
          v -> new SignalRoute(v.get(LEADS_TO), v.get(INDICATION), v.find(ROUTE_SPEED)));
  static final Key<String> ID =
      Key.required("id", Common.text("the signal as plated"), "As plated; unique on the route.");
  static final Key<Signal.Kind> SIGNAL_KIND =
      Key.required("kind", Scalar.Choice.of(Signal.Kind.class), "What it can show.");
  static final Key<String> LINE =
      Key.required("line", new RouteWord.Line(), "The running line for which it stands.");
  static final Key<Hand> SIGNAL_SIDE =
      Key.preset(
          "side",
          Scalar.Choice.of(Hand.class),
          Hand.LEFT,
          "left",
          "The side on which it stands, as the driver sees it to whom it shows.");
  static final Key<Location> AWS =
      Key.optional(
          "aws", RouteKeys.PLACE, "Where its AWS magnet lies; left out where it has none.");
  static final Key<List<SignalRoute>> SIGNAL_ROUTES =
      Key.preset(
          "routes", ListOf.any(SIGNAL_ROUTE), List.of(), "one", "The routes that it can show.");
  public static final Key<String> SIGNAL_PICTURE =
      RouteKeys.picture(
          "A PNG or JPEG file that shows it, in the folder of the route or below it.");
  public static final ObjectSchema<Signal> SIGNAL =
      ObjectSchema.of(
          "a signal",
          List.of(
              ID,
              SIGNAL_KIND,
              AT,
              DIRECTION,
              LINE,
              SIGNAL_SIDE,
              AWS,
              SIGNAL_ROUTES,
              SIGNAL_PICTURE,
              NOTE),
          v ->
              new Signal(
                  v.get(ID),
                  v.get(SIGNAL_KIND),
                  v.get(AT),
                  v.get(DIRECTION),
                  v.get(LINE),
                  v.get(SIGNAL_SIDE),
                  v.find(AWS),
                  v.get(SIGNAL_ROUTES),
                  v.get(NOTE),
                  v.find(SIGNAL_PICTURE)));

  static final Key<String> LANDMARK_NAME = Common.name("What a driver sees, in words.");
  static final Key<Hand> SIDE =
      Key.required("side", Scalar.Choice.of(Hand.class), "The side on which it stands, forward.");
  static final Key<Boolean> NIGHT =
      Key.required("night", Scalar.Choice.yesNo(), "Whether it serves at night.");
  static final Key<Length> SIGHTING =
      Key.required("sighting", Common.length("1 m", "5 km"), "From how far off a driver sees it.");
  public static final Key<String> PICTURE =
      RouteKeys.picture(
          "A PNG or JPEG file that shows it as seen forward, in the folder of the route or below it;"
              + " as seen backward if it stands for that direction alone.");
  public static final ObjectSchema<Landmark> LANDMARK =
      ObjectSchema.of(
          "a landmark",
          List.of(LANDMARK_NAME, AT, SIDE, NIGHT, SIGHTING, PICTURE, DIRECTIONS, LINES),
          v ->
              new Landmark(
                  v.get(LANDMARK_NAME),
                  v.get(AT),
                  RouteKeys.applies(v),
                  v.get(SIDE),
                  v.get(NIGHT),
                  v.get(SIGHTING),
                  v.find(PICTURE)));

  static final Key<Structure.Kind> STRUCTURE_KIND =
      Key.required("kind", Scalar.Choice.of(Structure.Kind.class), "What it is.");
  static final Key<String> STRUCTURE_NAME = Common.name("Its name.");
  static final Key<Location> STRUCTURE_FROM =
      Key.optional("from", RouteKeys.PLACE, "Where it begins, if it has a length.");
  static final Key<Location> STRUCTURE_TO =
      Key.optional("to", RouteKeys.PLACE, "Where it ends, if it has a length.");
  static final Key<Location> STRUCTURE_AT =
      Key.optional("at", RouteKeys.PLACE, "Where it is, if it has no length to speak of.");
  public static final ObjectSchema<Structure> STRUCTURE =
      ObjectSchema.of(
              "a structure",
              List.of(
                  STRUCTURE_KIND, STRUCTURE_NAME, STRUCTURE_FROM, STRUCTURE_TO, STRUCTURE_AT, NOTE),
              LinesideTables::structure)
          .checked(LinesideTables::fromToOrAt);

  static final Key<String> STRETCH_NAME = Common.name("What the stretch is called.");
  public static final ObjectSchema<RailGap> RAIL_GAP =
      ObjectSchema.of(
              "a rail gap",
              List.of(STRETCH_NAME, FROM, TO, DIRECTIONS, LINES),
              v -> new RailGap(v.get(STRETCH_NAME), RouteKeys.extent(v), RouteKeys.applies(v)))
          .checked(RouteKeys::forwardOrder);
  static final ObjectSchema<LowAdhesionSite> LOW_ADHESION =
      ObjectSchema.of(
              "a low-adhesion site",
              List.of(STRETCH_NAME, FROM, TO, DIRECTIONS, LINES, NOTE),
              v ->
                  new LowAdhesionSite(
                      v.get(STRETCH_NAME), RouteKeys.extent(v), RouteKeys.applies(v), v.get(NOTE)))
          .checked(RouteKeys::forwardOrder);

  static final Key<Speed> TEST_SPEED =
      Key.required("speed", RouteKeys.ROUTE_SPEED, "About how fast the test is made.");
  static final ObjectSchema<BrakeTestPlace> BRAKE_TEST =
      ObjectSchema.of(
          "a brake test place",
          List.of(AT, DIRECTION, TEST_SPEED, NOTE),
          v -> new BrakeTestPlace(v.get(AT), v.get(DIRECTION), v.get(TEST_SPEED), v.get(NOTE)));

  static final Key<String> SUBJECT =
      Key.required("subject", Common.prose("what was looked for"), "What was looked for.");
  static final Key<String> STATEMENT =
      Key.required(
          "statement",
          Common.prose("what is known, with a date"),
          "What is known of it, and when that was checked.");
  static final ObjectSchema<Observation> OBSERVATION =
      ObjectSchema.of(
          "an observation",
          List.of(SUBJECT, STATEMENT),
          v -> new Observation(v.get(SUBJECT), v.get(STATEMENT)));

  private static Structure structure(Values v) {
    Extent extent =
        v.find(STRUCTURE_AT)
            .map(at -> new Extent(at, at))
            .orElseGet(() -> new Extent(v.get(STRUCTURE_FROM), v.get(STRUCTURE_TO)));
    return new Structure(v.get(STRUCTURE_KIND), v.get(STRUCTURE_NAME), extent, v.get(NOTE));
  }

  private static void fromToOrAt(Values v) {
    boolean from = v.has(STRUCTURE_FROM);
    boolean to = v.has(STRUCTURE_TO);
    if (v.has(STRUCTURE_AT) ? from || to : !(from && to)) {
      v.in().error(v.spot(), RouteMistakes.STRUCTURE_WITHOUT_PLACE);
      return;
    }
    RouteFrame frame = RouteFrame.of(v.in());
    Common.whenBoth(
        v,
        STRUCTURE_FROM,
        STRUCTURE_TO,
        (a, b) -> {
          if (frame.metresAt(b) < frame.metresAt(a)) {
            v.error(STRUCTURE_TO, RouteMistakes.TO_BEFORE_FROM);
          }
        });
  }

  private LinesideTables() {}
}
