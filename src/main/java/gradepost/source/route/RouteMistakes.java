package gradepost.source.route;

import gradepost.route.LineHoles;
import gradepost.route.LineHoles.Between;
import gradepost.route.LineHoles.Place;
import gradepost.text.Allowed;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.MomentStyle;
import gradepost.yaml.Holes;
import java.time.LocalDateTime;
import java.util.Collection;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;

/** What can be wrong with a route by itself. Its sentences stand in {@code mistakes.properties}. */
final class RouteMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(RouteMistakes.class);
  private static final Hole<String> KEY = Hole.word("key");

  static final Two<Place, Place> NO_GRADIENT =
      MISTAKES.declare("no-gradient", LineHoles.place("from"), LineHoles.place("to"));
  static final Two<Place, Place> TWO_GRADIENTS =
      MISTAKES.declare("two-gradients", LineHoles.place("from"), LineHoles.place("to"));
  static final Two<Place, Place> NO_GRADIENT_AT_THE_END =
      MISTAKES.declare("no-gradient-at-the-end", LineHoles.place("from"), LineHoles.place("end"));
  static final Two<Place, Place> TWO_CURVES =
      MISTAKES.declare("two-curves", LineHoles.place("from"), LineHoles.place("to"));
  static final Four<String, Place, Place, Collection<String>> NO_PERMISSIBLE_SPEED =
      MISTAKES.declare(
          "no-permissible-speed",
          Hole.word("direction"),
          LineHoles.place("from"),
          LineHoles.place("to"),
          Hole.list("lines"));
  static final Three<String, String, String> SIGNAL_OFF_ITS_LINE =
      MISTAKES.declare(
          "signal-off-its-line", Hole.word("signal"), Hole.word("direction"), Hole.word("line"));
  static final Two<String, String> PLATFORM_WITHOUT_LINE =
      MISTAKES.declare("platform-without-line", Hole.word("platform"), Hole.word("station"));
  static final Two<String, Node> NOT_IN_MILES =
      MISTAKES.declare("not-in-miles", KEY, Holes.node("value"));
  static final Two<String, Node> NOT_IN_METRIC =
      MISTAKES.declare("not-in-metric", KEY, Holes.node("value"));
  static final Mistake TO_BEFORE_FROM = MISTAKES.declare("to-before-from");
  static final Mistake NO_LENGTH = MISTAKES.declare("no-length");
  static final Three<String, Node, Allowed> NOT_A_WORD =
      MISTAKES.declare("not-a-word", KEY, Holes.node("value"), Hole.allowed("allowed"));
  static final Four<String, String, Collection<String>, Optional<String>> UNKNOWN_WORD =
      MISTAKES.declare(
          "unknown-word", KEY, Holes.quoted("word"), Hole.list("known"), Hole.perhaps("near"));
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_SECTION =
      MISTAKES.declare(
          "unknown-section", Holes.quoted("section"), Hole.list("known"), Hole.perhaps("near"));

  /** Some sections in words, and one more. */
  private record OneMore(String sections, String section) {}

  private static final Phrase<OneMore> ON_ONE_MORE =
      MISTAKES.phrase(
          "on-one-more",
          Hole.word("sections")
              .of(OneMore::sections)
              .and(Hole.word("section").of(OneMore::section)));

  /** A section, and between which places it lies. */
  record Range(String section, Between between) {}

  private static final Phrase<Range> RANGE =
      MISTAKES.phrase(
          "range-of-section",
          Hole.word("section").of(Range::section).and(LineHoles.between().of(Range::between)));
  static final Two<Place, Range> OFF_THE_SECTION =
      MISTAKES.declare(
          "off-the-section",
          LineHoles.place("place"),
          Hole.word("section").of(Range::section).and(RANGE.in("range")));
  static final Three<String, Place, Collection<Range>> OFF_THE_ROUTE =
      MISTAKES.declare("off-the-route", KEY, LineHoles.place("place"), RANGE.list("ranges", "; "));
  static final Four<String, Place, Collection<String>, String> ON_SEVERAL_SECTIONS =
      MISTAKES.declare(
          "on-several-sections",
          KEY,
          LineHoles.place("place"),
          new Hole<>("sections", RouteMistakes::onAll),
          Hole.word("first"));
  static final Two<LocalDateTime, LocalDateTime> UNTIL_BEFORE_IMPOSED =
      MISTAKES.declare(
          "until-before-imposed",
          new Hole<>("until", MomentStyle.MOMENT::format),
          new Hole<>("imposed", MomentStyle.MOMENT::format));
  static final Mistake CHANGED_BEFORE_IMPOSED = MISTAKES.declare("changed-before-imposed");
  static final Mistake CHANGED_AFTER_UNTIL = MISTAKES.declare("changed-after-until");
  static final One<String> BOARD_FOR_OTHERS =
      MISTAKES.declare("board-for-others", Hole.word("direction"));
  static final Two<String, Allowed> CODE_TOO_LONG =
      MISTAKES.declare("code-too-long", Holes.quoted("code"), Hole.allowed("allowed"));
  static final One<String> STOP_MARK_FOR_OTHERS =
      MISTAKES.declare("stop-mark-for-others", Hole.word("direction"));
  static final Two<Integer, String> SECOND_STOP_MARK =
      MISTAKES.declare("second-stop-mark", Hole.count("cars"), Hole.word("direction"));
  static final Mistake SAME_DIRECTION_NAMES = MISTAKES.declare("same-direction-names");
  static final Mistake DIRECTION_NAMED_BOTH = MISTAKES.declare("direction-named-both");
  static final Mistake NO_RAIL_CENTRES = MISTAKES.declare("no-rail-centres");
  static final One<Double> RAIL_CENTRES_OFF_GAUGE =
      MISTAKES.declare("rail-centres-off-gauge", LineHoles.millimetresMore("more"));
  static final Mistake SECTION_TOO_SHORT = MISTAKES.declare("section-too-short");
  static final Mistake STRUCTURE_WITHOUT_PLACE = MISTAKES.declare("structure-without-place");
  static final Four<String, String, Allowed, Collection<String>> NO_DATE =
      MISTAKES.declare(
          "no-date", KEY, Holes.quoted("text"), Hole.allowed("allowed"), Hole.list("near"));
  static final Four<String, String, Allowed, String> NO_HOUR =
      MISTAKES.declare(
          "no-hour", KEY, Holes.quoted("text"), Hole.allowed("allowed"), Hole.word("day"));
  static final Four<String, String, Allowed, Collection<String>> NO_DATE_AND_HOUR =
      MISTAKES.declare(
          "no-date-and-hour",
          KEY,
          Holes.quoted("text"),
          Hole.allowed("allowed"),
          Hole.list("near"));
  static final Four<String, String, Allowed, Collection<String>> NO_HOURS =
      MISTAKES.declare(
          "no-hours", KEY, Holes.quoted("text"), Hole.allowed("allowed"), Hole.list("near"));

  static final Two<String, String> SAME_HOURS =
      MISTAKES.declare("same-hours", KEY, Holes.quoted("text"));

  private static String onAll(Collection<String> sections) {
    return sections.stream()
        .reduce((some, more) -> ON_ONE_MORE.of(new OneMore(some, more)))
        .orElse("");
  }

  private RouteMistakes() {}
}
