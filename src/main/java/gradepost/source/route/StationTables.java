package gradepost.source.route;

import static gradepost.source.route.RouteKeys.DIRECTIONS;
import static gradepost.source.route.RouteKeys.FROM;
import static gradepost.source.route.RouteKeys.LINES;
import static gradepost.source.route.RouteKeys.TO;

import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.route.station.StopMark;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Key tables of stations, platforms and stop marks. */
public final class StationTables {
  static final Key<Double> CARS =
      Key.required(
          "cars",
          new Scalar.PlainNumber("a number of cars", true, 1, 40),
          "The number of cars of the trains that stop at it.");
  static final Key<Location> MARK_AT =
      Key.required("at", RouteKeys.PLACE, "Where the front of the train stops.");
  static final ObjectSchema<StopMark> STOP_MARK =
      ObjectSchema.of(
          "a stop mark",
          List.of(CARS, MARK_AT, RouteKeys.DIRECTION),
          v -> new StopMark(v.get(CARS).intValue(), v.get(MARK_AT), v.get(RouteKeys.DIRECTION)));

  static final Key<String> NUMBER =
      Key.required("number", Common.text("the number as signed"), "The platform as signed.");
  static final Key<Hand> SIDE =
      Key.required(
          "side", Scalar.Choice.of(Hand.class), "The side on which it lies, seen forward.");
  static final Key<Location> BUFFER_STOPS =
      Key.optional(
          "buffer-stops",
          RouteKeys.PLACE,
          "The face of the buffer stops, where the platform road ends in them.");
  static final Key<List<StopMark>> STOP_MARKS =
      Key.preset(
          "stop-marks",
          ListOf.any(STOP_MARK),
          List.of(),
          "none",
          "Where trains stop, by number of cars and direction.");
  static final Key<String> DOORS =
      Key.preset(
          "doors",
          Common.prose("an instruction in words"),
          "",
          "",
          "What is done with the doors of a train that is longer than the platform.");
  public static final ObjectSchema<Platform> PLATFORM =
      ObjectSchema.of(
              "a platform",
              List.of(NUMBER, FROM, TO, DIRECTIONS, LINES, SIDE, BUFFER_STOPS, STOP_MARKS, DOORS),
              v ->
                  new Platform(
                      v.get(NUMBER),
                      RouteKeys.extent(v),
                      RouteKeys.applies(v),
                      v.get(SIDE),
                      v.find(BUFFER_STOPS),
                      v.get(STOP_MARKS),
                      v.get(DOORS)))
          .checked(RouteKeys::forwardOrder)
          .checked(StationTables::marksFitPlatform);

  public static final Key<String> STATION_NAME = Common.name("The station; unique on the route.");
  public static final Key<String> CODE =
      Key.required(
          "code",
          Common.text("a short name of up to six letters"),
          "The short name on charts; unique on the route.");
  public static final Key<String> PICTURE =
      RouteKeys.picture(
          "A PNG or JPEG file that shows it as seen forward, in the folder of the route or below it;"
              + " as seen backward if its platforms serve that direction alone.");
  public static final Key<List<Platform>> PLATFORMS =
      Key.required("platforms", ListOf.some(PLATFORM).unique("number"), "Its platforms.");
  static final ObjectSchema<Station> STATION =
      ObjectSchema.of(
              "a station",
              List.of(STATION_NAME, CODE, PICTURE, PLATFORMS),
              v -> new Station(v.get(STATION_NAME), v.get(CODE), v.get(PLATFORMS), v.find(PICTURE)))
          .checked(StationTables::shortCode);

  private static void shortCode(Values v) {
    v.find(CODE)
        .filter(code -> code.length() > 6)
        .ifPresent(code -> v.error(CODE, RouteMistakes.CODE_TOO_LONG.with(code, CODE.kind())));
  }

  private static void marksFitPlatform(Values v) {
    Common.whenBoth(
        v,
        DIRECTIONS,
        STOP_MARKS,
        (directions, marks) -> {
          Set<List<Object>> seen = new HashSet<>();
          for (StopMark mark : marks) {
            String name = RouteFrame.of(v.in()).nameOf(mark.direction());
            if (!directions.contains(mark.direction())) {
              v.in()
                  .error(
                      v.in().spot(mark, RouteKeys.DIRECTION),
                      RouteMistakes.STOP_MARK_FOR_OTHERS.with(name));
            } else if (!seen.add(List.of(mark.cars(), mark.direction()))) {
              v.in()
                  .error(v.in().spot(mark), RouteMistakes.SECOND_STOP_MARK.with(mark.cars(), name));
            }
          }
        });
  }

  private StationTables() {}
}
