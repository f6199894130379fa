package gradepost.source.route;

import static gradepost.source.route.RouteKeys.DIRECTIONS;
import static gradepost.source.route.RouteKeys.FROM;
import static gradepost.source.route.RouteKeys.LINES;
import static gradepost.source.route.RouteKeys.SPEED;
import static gradepost.source.route.RouteKeys.TO;

import gradepost.pack.DailyHours;
import gradepost.pack.Particulars;
import gradepost.pack.TemporaryRestriction;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.Differential;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.PermanentRestriction;
import gradepost.units.Speed;
import gradepost.yaml.Common;
import gradepost.yaml.Key;
import gradepost.yaml.ListOf;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Scalar;
import gradepost.yaml.Values;
import gradepost.yaml.WordOr;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** Key tables of permissible speeds: permanent, by notice, and over junctions. */
public final class SpeedTables {
  static final Key<String> TRAIN_CLASS =
      Key.required(
          "class", Common.text("a class of train"), "The class of train, as the stock names it.");
  static final ObjectSchema<Differential> DIFFERENTIAL =
      ObjectSchema.of(
          "a differential speed",
          List.of(TRAIN_CLASS, SPEED),
          v -> new Differential(v.get(TRAIN_CLASS), v.get(SPEED)));
  public static final Key<List<Differential>> DIFFERENTIALS =
      Key.preset(
          "differential",
          ListOf.some(DIFFERENTIAL).unique("class"),
          List.of(),
          "none",
          "Other speeds for some classes of train.");

  static final Key<BoardKind> BOARD_KIND =
      Key.required("kind", Scalar.Choice.of(BoardKind.class), "What the board announces.");
  static final ObjectSchema<Board> BOARD =
      ObjectSchema.of(
          "a board",
          List.of(BOARD_KIND, RouteKeys.AT, RouteKeys.DIRECTION),
          v -> new Board(v.get(BOARD_KIND), v.get(RouteKeys.AT), v.get(RouteKeys.DIRECTION)));

  /** What is typed where none stands at the lineside: PAPER ONLY. */
  public static final String NO_BOARDS = "none";

  public static final Key<List<Board>> BOARDS =
      Key.preset(
          "boards",
          new WordOr<>(NO_BOARDS, List.of(), ListOf.any(BOARD)),
          List.of(),
          "none at the lineside",
          "The boards that stand at the lineside for it, or none.");

  static final Key<String> RESTRICTION_NAME =
      Common.name("What the restriction is called in the briefing.");
  public static final Key<String> REASON =
      Key.preset("reason", Common.prose("a reason in words"), "", "", "Why it stands.");
  public static final ObjectSchema<PermanentRestriction> PERMANENT =
      ObjectSchema.of(
              "a permissible speed",
              List.of(
                  RESTRICTION_NAME,
                  FROM,
                  TO,
                  DIRECTIONS,
                  LINES,
                  SPEED,
                  DIFFERENTIALS,
                  BOARDS,
                  REASON),
              v ->
                  new PermanentRestriction(
                      v.get(RESTRICTION_NAME),
                      RouteKeys.extent(v),
                      RouteKeys.applies(v),
                      v.get(SPEED),
                      v.get(DIFFERENTIALS),
                      v.get(BOARDS),
                      v.get(REASON)))
          .checked(RouteKeys::forwardOrder)
          .checked(SpeedTables::boardsFitDirections);

  static final Key<String> ROUTE_NAME =
      Common.name("Where this way leads, as a pack names it; unique at the junction.");
  static final Key<Boolean> DIVERGING =
      Key.preset(
          "diverging",
          Scalar.Choice.yesNo(),
          false,
          "no",
          "Whether it leaves the usual way over the points.");
  static final ObjectSchema<JunctionRoute> JUNCTION_ROUTE =
      ObjectSchema.of(
          "a way through a junction",
          List.of(ROUTE_NAME, SPEED, DIVERGING),
          v -> new JunctionRoute(v.get(ROUTE_NAME), v.get(SPEED), v.get(DIVERGING)));
  static final Key<String> JUNCTION_NAME = Common.name("The junction; unique on the route.");
  static final Key<List<JunctionRoute>> JUNCTION_ROUTES =
      Key.required(
          "routes",
          ListOf.some(JUNCTION_ROUTE).unique("name"),
          "The ways through it, the usual one first.");
  public static final ObjectSchema<Junction> JUNCTION =
      ObjectSchema.of(
              "a junction",
              List.of(JUNCTION_NAME, FROM, TO, DIRECTIONS, LINES, JUNCTION_ROUTES),
              v ->
                  new Junction(
                      v.get(JUNCTION_NAME),
                      RouteKeys.extent(v),
                      RouteKeys.applies(v),
                      v.get(JUNCTION_ROUTES)))
          .checked(RouteKeys::forwardOrder);

  public static final Key<String> REFERENCE =
      Key.required(
          "reference",
          Common.text("the reference of the notice"),
          "The reference of the notice; the same in every issue.");
  public static final Key<TemporaryRestriction.Kind> TYPE =
      Key.required(
          "type",
          Scalar.Choice.of(TemporaryRestriction.Kind.class),
          "How the restriction was made known.");
  public static final Key<TemporaryRestriction.Status> STATUS =
      Key.required(
          "status",
          Scalar.Choice.of(TemporaryRestriction.Status.class),
          "Where the restriction is in its life.");
  public static final Key<Speed> NORMAL_SPEED =
      Key.optional("normal-speed", RouteKeys.ROUTE_SPEED, "The speed without the restriction.");
  public static final Key<LocalDateTime> IMPOSED =
      Key.required("imposed", new Moment.DayAndHour(), "When it begins to stand.");
  public static final Key<LocalDateTime> CHANGED_FROM =
      Key.optional(
          "changed-from",
          new Moment.DayAndHour(),
          "When this form, or the withdrawal, takes effect. Only for a restriction that was in force"
              + " in another form before.");
  public static final Key<Optional<LocalDateTime>> UNTIL =
      Key.required("until", new Moment.OpenEnd(), "When it ceases to stand.");
  public static final Key<DailyHours> HOURS =
      Key.optional(
          "hours", new Moment.Hours(), "The hours of day in which it stands; all day if left out.");
  public static final Key<String> ISSUED_BY =
      Key.preset("issued-by", Common.text("an office"), "", "", "Who issued the notice.");
  public static final Key<String> NOTICE_ROUTE =
      Key.preset(
          "route",
          Common.text("the name of a route"),
          "",
          "the route of the pack",
          "The name of the route that the notice is for.");
  public static final Key<String> BETWEEN =
      Key.preset(
          "between",
          Common.text("two places in words"),
          "",
          "",
          "The stations between which it lies.");
  public static final Key<String> NEAR_FROM =
      Key.preset(
          "near-from",
          Common.text("the name of a feature of the route"),
          "",
          "",
          "A feature near where it begins; checked against the mileage.");
  public static final Key<String> NEAR_TO =
      Key.preset(
          "near-to",
          Common.text("the name of a feature of the route"),
          "",
          "",
          "A feature near where it ends; checked against the mileage.");
  public static final Key<String> AWS =
      Key.preset(
          "aws",
          Common.text("words"),
          "",
          "",
          "What is done with the warning equipment of the track.");
  public static final Key<LocalDateTime> NOTICE_ISSUED =
      Key.optional("issued", new Moment.DayAndHour(), "When the notice was issued.");
  public static final Key<String> FIRST_APPEARANCE =
      Key.preset(
          "first-appearance",
          Common.text("an issue of the notice"),
          "",
          "",
          "The issue of the notices in which it stood first.");
  public static final Key<String> LAST_APPEARANCE =
      Key.preset(
          "last-appearance",
          Common.text("an issue of the notice"),
          "",
          "",
          "The issue of the notices in which it stands last.");
  public static final ObjectSchema<TemporaryRestriction> NOTICE =
      ObjectSchema.of(
              "a notice",
              List.of(
                  REFERENCE,
                  TYPE,
                  STATUS,
                  FROM,
                  TO,
                  DIRECTIONS,
                  LINES,
                  SPEED,
                  DIFFERENTIALS,
                  NORMAL_SPEED,
                  REASON,
                  IMPOSED,
                  CHANGED_FROM,
                  UNTIL,
                  HOURS,
                  BOARDS,
                  ISSUED_BY,
                  NOTICE_ROUTE,
                  BETWEEN,
                  NEAR_FROM,
                  NEAR_TO,
                  AWS,
                  NOTICE_ISSUED,
                  FIRST_APPEARANCE,
                  LAST_APPEARANCE),
              SpeedTables::notice)
          .checked(RouteKeys::forwardOrder)
          .checked(SpeedTables::boardsFitDirections)
          .checked(SpeedTables::noticeEndsAfterItBegins)
          .checked(SpeedTables::changesWhileItStands);

  private static TemporaryRestriction notice(Values v) {
    return new TemporaryRestriction(
        v.get(REFERENCE),
        v.get(TYPE),
        v.get(STATUS),
        RouteKeys.extent(v),
        RouteKeys.applies(v),
        v.get(SPEED),
        v.get(DIFFERENTIALS),
        v.find(NORMAL_SPEED),
        v.get(REASON),
        v.get(IMPOSED),
        v.find(CHANGED_FROM),
        v.get(UNTIL),
        v.find(HOURS),
        v.get(BOARDS),
        v.get(ISSUED_BY),
        new Particulars(
            v.get(NOTICE_ROUTE),
            v.get(BETWEEN),
            v.get(NEAR_FROM),
            v.get(NEAR_TO),
            v.get(AWS),
            v.find(NOTICE_ISSUED),
            v.get(FIRST_APPEARANCE),
            v.get(LAST_APPEARANCE)));
  }

  private static void noticeEndsAfterItBegins(Values v) {
    Common.whenBoth(
        v,
        IMPOSED,
        UNTIL,
        (imposed, until) -> {
          if (until.isPresent() && !until.get().isAfter(imposed)) {
            v.error(UNTIL, RouteMistakes.UNTIL_BEFORE_IMPOSED.with(until.get(), imposed));
          }
        });
  }

  private static void changesWhileItStands(Values v) {
    Common.whenBoth(
        v,
        IMPOSED,
        CHANGED_FROM,
        (imposed, changed) -> {
          if (changed.isBefore(imposed)) {
            v.error(CHANGED_FROM, RouteMistakes.CHANGED_BEFORE_IMPOSED);
          }
        });
    Common.whenBoth(
        v,
        UNTIL,
        CHANGED_FROM,
        (until, changed) -> {
          if (until.filter(end -> end.isBefore(changed)).isPresent()) {
            v.error(CHANGED_FROM, RouteMistakes.CHANGED_AFTER_UNTIL);
          }
        });
  }

  private static void boardsFitDirections(Values v) {
    Common.whenBoth(
        v,
        DIRECTIONS,
        BOARDS,
        (directions, boards) -> {
          for (Board board : boards) {
            if (!directions.contains(board.direction())) {
              String name = RouteFrame.of(v.in()).nameOf(board.direction());
              v.in()
                  .error(
                      v.in().spot(board, RouteKeys.DIRECTION),
                      RouteMistakes.BOARD_FOR_OTHERS.with(name));
            }
          }
        });
  }

  private SpeedTables() {}
}
