package gradepost.route.audit;

import gradepost.route.BigDrop;
import gradepost.route.BoardKind;
import gradepost.route.Curve;
import gradepost.route.LineHoles;
import gradepost.route.LineHoles.Between;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.LineHoles.Place;
import gradepost.route.PermanentRestriction;
import gradepost.route.place.Hand;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.route.station.StopMark;
import gradepost.text.Hole;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Five;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Six;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.Gradient;
import gradepost.units.Length;
import gradepost.units.PrintedText;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.Collection;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Every way in which a rule finds something. Its sentences stand in {@code findings.properties}
 * under the code of the rule and, where the rule has several ways, the word of this one.
 */
public final class AuditText {
  static final Mistakes MISTAKES = Mistakes.beside(AuditText.class, "findings.properties");

  /** A train of the pack: its formation and the route's name for its direction. */
  public record Train(String formation, String direction) {

    /** "8-car, Down"; every finding about a train begins with it. */
    public String inWords() {
      return TRAIN_WORDS.of(this);
    }
  }

  /** A platform, and the station that has it. */
  public record PlatformOf(Station station, Platform platform) {}

  /** A stop mark, with the route's words for its direction and its place. */
  record MarkAt(PlatformOf platform, StopMark mark, String direction, Place place) {}

  /** A curve, and between which places it lies. */
  record CurveAt(Curve curve, Between between) {}

  /** A speed, and the restriction that gives it. */
  record Given(InUnits<Speed> speed, PermanentRestriction by) {}

  /** An entry of a list; its name is empty text where it has none. */
  record Entry(String noun, String name) {}

  /** What a brake needs to stop; empty where the gradient leaves it less than nothing. */
  public record Need(String brake, Optional<InUnits<Length>> length) {}

  /**
   * A braking point that wants a cue.
   *
   * @param target what is braked for
   * @param withinS a cue stands no longer than this before it, s
   * @param from a cue is looked for from here to {@code place}, where the brake goes on
   */
  public record Uncued(String target, long withinS, Place from, Place place) {}

  private static final Phrase<Train> TRAIN_WORDS =
      MISTAKES.phrase(
          "train",
          Hole.word("formation")
              .of(Train::formation)
              .and(Hole.word("direction").of(Train::direction)));
  private static final Phrase<Entry> NAMED_ENTRY =
      MISTAKES.phrase(
          "named-entry", Hole.word("noun").of(Entry::noun).and(Hole.word("name").of(Entry::name)));
  private static final Phrase<Need> NEED =
      MISTAKES.phrase(
          "need",
          Hole.word("brake")
              .of(Need::brake)
              .and(LineHoles.lengthUp("length").of(need -> need.length().orElseThrow())));
  private static final Phrase<Need> NEED_ENDLESS =
      MISTAKES.phrase("need.endless", Hole.word("brake").of(Need::brake));
  private static final Map<AuditRule, String> SUMMARIES = summaries();

  private static final Hole<Train> TRAIN = TRAIN_WORDS.in("train");
  private static final Hole<Between> BETWEEN = LineHoles.between();
  private static final Hole<Place> PLACE = LineHoles.place("place");
  private static final Hole<String> DIRECTION = Hole.word("direction");
  private static final Hole<String> LANDMARK = Hole.word("landmark");
  private static final Hole<String> SIGNAL = Hole.word("signal");
  private static final Hole<String> GAP = Hole.word("gap");
  private static final Hole<InUnits<Length>> LENGTH_UP = LineHoles.lengthUp("length");
  private static final Hole<Integer> MISSING = Hole.count("missing");
  private static final Hole<Integer> POINTS = Hole.count("points");
  private static final Hole<String> LINE = Hole.word("line");
  private static final Hole<PlatformOf> PLATFORM =
      Hole.word("platform")
          .<PlatformOf>of(at -> at.platform().number())
          .and(Hole.word("station").of(at -> at.station().name()));
  private static final Hole<MarkAt> MARK =
      PLATFORM
          .of(MarkAt::platform)
          .and(Hole.count("cars").of(at -> at.mark().cars()))
          .and(DIRECTION.of(MarkAt::direction))
          .and(PLACE.of(MarkAt::place));
  private static final Hole<CurveAt> CURVE = BETWEEN.of(CurveAt::between);
  private static final Hole<CurveAt> CANT = millimetres("cant").of(at -> at.curve().cant());
  private static final Hole<CurveAt> RADIUS =
      new Hole<>("radius", at -> Long.toString(Math.round(at.curve().radius().metres())));
  private static final Hole<Given> GIVEN =
      LineHoles.speed("speed")
          .of(Given::speed)
          .and(Hole.word("restriction").of(given -> given.by().name()));

  private static final Hole<Uncued> UNCUED =
      Hole.word("target")
          .of(Uncued::target)
          .and(PLACE.of(Uncued::place))
          .and(new Hole<>("time", uncued -> uncued.withinS() + " s"));
  private static final Hole<Uncued> UNCUED_FROM =
      UNCUED.and(LineHoles.place("from").of(Uncued::from));

  /** A fall by more than this is big, in both systems of units, whatever falls. */
  private static final Hole<Object> FAR =
      new Hole<>("mph", any -> BigDrop.far(UnitStyle.MILES))
          .and(new Hole<>("km-h", any -> BigDrop.far(UnitStyle.METRIC)));

  static final Five<Place, Place, Double, Double, Double> GRADIENT_CLOSURE =
      MISTAKES.declare(
          "gradient-closure",
          LineHoles.place("from"),
          LineHoles.place("to"),
          rise("summed"),
          rise("surveyed"),
          metres("allowed"));
  static final Two<InUnits<Gradient>, Between> GRADIENT_STEEP =
      MISTAKES.declare("gradient-steep", LineHoles.gradient("gradient"), BETWEEN);
  static final Five<String, Place, String, Place, InUnits<Length>> MILEAGE_JUMP =
      MISTAKES.declare(
          "mileage-jump",
          Hole.word("before"),
          LineHoles.place("end"),
          Hole.word("after"),
          LineHoles.place("begin"),
          LineHoles.lengthNearest("jump"));
  static final Five<Given, Length, CurveAt, Length, InUnits<Speed>> CURVE_SPEED =
      MISTAKES.declare(
          "curve-speed",
          GIVEN,
          millimetres("deficiency"),
          CURVE.and(RADIUS).and(CANT),
          millimetres("limit"),
          LineHoles.speed("permits"));
  static final Two<CurveAt, Length> CANT_HIGH =
      MISTAKES.declare("cant-high", CURVE.and(CANT), millimetres("limit"));
  static final Three<CurveAt, PlatformOf, Length> CANT_HIGH_AT_PLATFORM =
      MISTAKES.declare("cant-high.at-platform", CURVE.and(CANT), PLATFORM, millimetres("limit"));
  static final Four<Given, Length, CurveAt, Length> CANT_EXCESS =
      MISTAKES.declare(
          "cant-excess",
          GIVEN,
          millimetres("excess"),
          CURVE.and(RADIUS).and(CANT),
          millimetres("limit"));
  static final One<CurveAt> CHECK_RAIL_MISSING =
      MISTAKES.declare("check-rail-missing", CURVE.and(RADIUS));
  static final Two<Between, Hand> CHECK_RAIL_SIDE =
      MISTAKES.declare("check-rail-side", BETWEEN, LineHoles.hand("side"));
  static final Four<String, Place, Hand, Hand> CHECK_RAIL_LANDMARK_SIDE =
      MISTAKES.declare(
          "check-rail-landmark.side",
          LANDMARK,
          PLACE,
          LineHoles.hand("side"),
          LineHoles.hand("rail"));
  static final Four<String, Place, String, String> CHECK_RAIL_LANDMARK_BEGINS =
      MISTAKES.declare(
          "check-rail-landmark.begins", LANDMARK, PLACE, DIRECTION, Hole.word("other"));
  static final Four<String, Place, String, String> CHECK_RAIL_LANDMARK_ENDS =
      MISTAKES.declare("check-rail-landmark.ends", LANDMARK, PLACE, DIRECTION, Hole.word("other"));
  static final Five<String, InUnits<Speed>, InUnits<Speed>, Place, String> BIG_DROP =
      MISTAKES.declare(
          "big-drop",
          DIRECTION,
          LineHoles.speed("from"),
          LineHoles.speed("to"),
          PLACE,
          Hole.word("restriction").and(FAR));
  public static final Five<Train, String, InUnits<Speed>, InUnits<Speed>, Place> BIG_DROP_NOTICE =
      MISTAKES.declare(
          "big-drop.notice",
          TRAIN,
          Hole.word("notice").and(FAR),
          LineHoles.speed("from"),
          LineHoles.speed("to"),
          PLACE);
  static final Five<BoardKind, String, String, Place, Place> BOARD_PLACE_BEFORE =
      boardPlace("board-place.before");
  static final Five<BoardKind, String, String, Place, Place> BOARD_PLACE_AT =
      boardPlace("board-place.at");
  static final Three<String, Place, String> AWS_MISSING =
      MISTAKES.declare("aws-missing", SIGNAL, PLACE, LINE);
  static final Four<String, InUnits<Length>, InUnits<Length>, InUnits<Length>> AWS_PLACE_BEFORE =
      awsPlace("aws-place.before");
  static final Four<String, InUnits<Length>, InUnits<Length>, InUnits<Length>> AWS_PLACE_BEYOND =
      awsPlace("aws-place.beyond");
  static final Three<String, Place, String> OFF_LINE_SIGNAL =
      MISTAKES.declare("off-line.signal", SIGNAL, PLACE, LINE);
  static final One<PlatformOf> OFF_LINE_PLATFORM = MISTAKES.declare("off-line.platform", PLATFORM);
  static final Three<MarkAt, InUnits<Length>, Between> MARK_OFF_PLATFORM =
      MISTAKES.declare("mark-off-platform", MARK, LineHoles.lengthNearest("off"), BETWEEN);
  static final Two<PlatformOf, Place> MARK_PAST_BUFFERS_WITHIN =
      MISTAKES.declare("mark-past-buffers.within", PLATFORM, LineHoles.place("buffers"));
  static final Two<MarkAt, Place> MARK_PAST_BUFFERS_MARK =
      MISTAKES.declare("mark-past-buffers.mark", MARK, LineHoles.place("buffers"));
  static final Three<Entry, Place, Place> OUT_OF_ORDER_BEFORE =
      MISTAKES.declare("out-of-order.before", entry(), PLACE, LineHoles.place("next"));
  static final Three<Entry, Place, Place> OUT_OF_ORDER_AFTER =
      MISTAKES.declare("out-of-order.after", entry(), PLACE, LineHoles.place("last"));
  static final Four<Entry, Place, Place, Place> OUT_OF_ORDER_BETWEEN =
      MISTAKES.declare(
          "out-of-order.between", entry(), PLACE, LineHoles.place("last"), LineHoles.place("next"));
  static final Six<String, Place, String, String, Place, InUnits<Length>> NAME_PLACE_FAR =
      MISTAKES.declare(
          "name-place.far",
          LANDMARK,
          PLACE,
          Hole.word("kind"),
          Hole.word("name"),
          LineHoles.place("there"),
          LineHoles.lengthNearest("distance"));
  static final Three<String, Place, Place> NAME_PLACE_AGAIN =
      MISTAKES.declare("name-place.again", LANDMARK, PLACE, LineHoles.place("there"));
  static final Two<String, String> TWO_NAMES_SPELT =
      MISTAKES.declare("two-names.spelt", Hole.word("name"), Hole.word("other"));
  static final Three<String, String, Place> TWO_NAMES_AT_ONE_PLACE =
      MISTAKES.declare("two-names.at-one-place", Hole.word("name"), Hole.word("other"), PLACE);
  public static final Five<String, String, String, Integer, Integer> UNITS_MIXED =
      MISTAKES.declare(
          "units-mixed",
          Hole.word("key"),
          PrintedText.quoted("odd"),
          PrintedText.quoted("usual"),
          Hole.count("line"),
          Hole.count("column"));
  static final One<String> NOT_SUPPLIED = MISTAKES.declare("not-supplied", Hole.word("entries"));
  static final One<String> OBSERVATION_UNDATED =
      MISTAKES.declare("observation-undated", Hole.word("subject"));
  public static final Two<String, Optional<String>> ACCEPTED_UNFOUND =
      MISTAKES.declare("accepted-unfound", Hole.word("rule"), Hole.perhaps("found"));
  public static final Four<Train, String, Place, Place> WARNING_LATE =
      MISTAKES.declare("warning-late", TRAIN, Hole.word("name"), PLACE, LineHoles.place("latest"));
  public static final Six<Train, InUnits<Length>, String, String, InUnits<Speed>, Collection<Need>>
      SIGNAL_SPACING =
          MISTAKES.declare(
              "signal-spacing",
              TRAIN,
              LineHoles.lengthDown("available"),
              Hole.word("warning"),
              SIGNAL,
              LineHoles.speed("speed"),
              new Hole<>(
                  "needs",
                  needs ->
                      needs.stream().map(AuditText::inWords).collect(Collectors.joining(", "))));
  public static final Four<Train, PlatformOf, InUnits<Length>, InUnits<Length>> PLATFORM_SHORT =
      MISTAKES.declare(
          "platform-short",
          TRAIN,
          PLATFORM,
          LineHoles.lengthDown("length"),
          LineHoles.lengthUp("needed"));
  public static final Three<Train, PlatformOf, Integer> MARK_MISSING =
      MISTAKES.declare("mark-missing", TRAIN, PLATFORM, Hole.count("cars"));
  public static final Four<Train, PlatformOf, InUnits<Double>, InUnits<Length>> NEAR_BUFFERS =
      MISTAKES.declare(
          "near-buffers",
          TRAIN,
          PLATFORM,
          LineHoles.metresBeforeDown("distance"),
          LineHoles.lengthUp("margin"));
  public static final Five<Train, String, String, Long, Long> BOOKED_TIME =
      MISTAKES.declare(
          "booked-time",
          TRAIN,
          Hole.word("from"),
          Hole.word("to"),
          LineHoles.minutes("booked"),
          LineHoles.minutes("planned"));
  public static final Four<Train, String, InUnits<Length>, String> GAP_LONG_AT_STATION =
      MISTAKES.declare("gap-long.at-station", TRAIN, GAP, LENGTH_UP, Hole.word("station"));
  public static final Four<Train, String, InUnits<Length>, String> GAP_LONG_BEFORE_SIGNAL =
      MISTAKES.declare("gap-long.before-signal", TRAIN, GAP, LENGTH_UP, SIGNAL);
  public static final Six<
          Train, String, InUnits<Length>, InUnits<Length>, InUnits<Speed>, InUnits<Speed>>
      GAP_LONG_SLOWLY =
          MISTAKES.declare(
              "gap-long.slowly",
              TRAIN,
              GAP,
              LENGTH_UP,
              LineHoles.lengthDown("bridged"),
              LineHoles.speed("least"),
              LineHoles.speed("planned"));
  public static final Two<Train, Uncued> CUE_MISSING_NONE =
      MISTAKES.declare("cue-missing.none", TRAIN, UNCUED_FROM);
  public static final Two<Train, Uncued> CUE_MISSING_AT_NIGHT =
      MISTAKES.declare("cue-missing.at-night", TRAIN, UNCUED_FROM);
  public static final Four<Train, Uncued, Integer, Integer> CUE_MISSING_NO_SURVEY =
      MISTAKES.declare("cue-missing.no-survey", TRAIN, UNCUED_FROM, MISSING, POINTS);
  public static final Four<Train, Uncued, Integer, Integer> CUE_MISSING_NO_SURVEY_AT_NIGHT =
      MISTAKES.declare("cue-missing.no-survey-at-night", TRAIN, UNCUED_FROM, MISSING, POINTS);
  public static final One<Double> PERCENTAGE_CUT =
      MISTAKES.declare(
          "percentage-cut", new Hole<>("most", most -> String.format(Locale.ROOT, "%.0f", most)));
  public static final Five<Train, String, Place, String, Place> NO_BRAKING_POINT_FULL_SERVICE =
      MISTAKES.declare(
          "no-braking-point.full-service",
          TRAIN,
          Hole.word("target"),
          PLACE,
          Hole.word("rail"),
          LineHoles.place("latest"));
  public static final Four<Train, String, Place, String> NO_BRAKING_POINT_TOO_STEEP =
      MISTAKES.declare(
          "no-braking-point.too-steep", TRAIN, Hole.word("target"), PLACE, Hole.word("rail"));
  public static final Four<Train, String, Place, String> NO_BRAKING_POINT_TOO_SHORT =
      MISTAKES.declare(
          "no-braking-point.too-short", TRAIN, Hole.word("target"), PLACE, Hole.word("rail"));

  private static Five<BoardKind, String, String, Place, Place> boardPlace(String key) {
    return MISTAKES.declare(
        key,
        new Hole<>("board", kind -> kind.name().toLowerCase(Locale.ROOT)),
        Hole.word("restriction"),
        DIRECTION,
        PLACE,
        LineHoles.place("right"));
  }

  private static Four<String, InUnits<Length>, InUnits<Length>, InUnits<Length>> awsPlace(
      String key) {
    return MISTAKES.declare(
        key,
        SIGNAL,
        LineHoles.lengthNearest("distance"),
        LineHoles.lengthNearest("least"),
        LineHoles.lengthNearest("most"));
  }

  /** A hole for so many metres up, negative for down: "+3.1 m". */
  private static Hole<Double> rise(String name) {
    return new Hole<>(name, m -> String.format(Locale.ROOT, "%+.1f m", m));
  }

  private static Hole<Double> metres(String name) {
    return new Hole<>(name, m -> String.format(Locale.ROOT, "%.1f m", m));
  }

  private static Hole<Length> millimetres(String name) {
    return new Hole<>(name, length -> String.format(Locale.ROOT, "%.0f", length.metres() * 1000));
  }

  private static Hole<Entry> entry() {
    return new Hole<>(
        "entry", entry -> entry.name().isEmpty() ? entry.noun() : NAMED_ENTRY.of(entry));
  }

  private static String inWords(Need need) {
    return (need.length().isPresent() ? NEED : NEED_ENDLESS).of(need);
  }

  private static Map<AuditRule, String> summaries() {
    Map<AuditRule, String> summaries = new EnumMap<>(AuditRule.class);
    for (AuditRule rule : AuditRule.values()) {
      summaries.put(rule, MISTAKES.phrase(rule.code() + ".summary"));
    }
    return summaries;
  }

  /** What is right by a rule, in a sentence. */
  static String summary(AuditRule rule) {
    return SUMMARIES.getOrDefault(rule, "");
  }

  private AuditText() {}
}
