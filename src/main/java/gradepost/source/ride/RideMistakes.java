package gradepost.source.ride;

import gradepost.route.LineHoles;
import gradepost.route.LineHoles.Place;
import gradepost.text.Allowed;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Five;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.yaml.Holes;
import gradepost.yaml.SourcePosition;
import java.util.Collection;
import java.util.Optional;

/**
 * What can be wrong with what was observed of a ride. Its sentences stand in {@code
 * mistakes.properties}.
 */
final class RideMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(RideMistakes.class);

  static final Mistake ONE_SAMPLE = MISTAKES.declare("one-sample");
  static final Mistake DISTANCE_GOES_BACK = MISTAKES.declare("distance-goes-back");
  static final Mistake BELOW_ZERO = MISTAKES.declare("below-zero");
  static final Mistake NOTHING_BETWEEN = MISTAKES.declare("nothing-between");
  static final One<Integer> LINES_LEFT_OUT =
      MISTAKES.declare("lines-left-out", Hole.count("lines"));
  static final Two<Collection<String>, Collection<String>> NOT_USED =
      MISTAKES.declare("not-used", Hole.list("columns"), Hole.list("known"));
  static final One<String> NO_TIME = MISTAKES.declare("no-time", Holes.quoted("text"));
  static final Two<String, String> NOT_ON_THE_ROUTE =
      MISTAKES.declare("not-on-the-route", Hole.word("column"), Holes.quoted("text"));
  static final Three<Integer, String, String> OTHER_NAME =
      MISTAKES.declare(
          "other-name", Hole.count("approach"), Holes.quoted("text"), Holes.quoted("name"));
  static final Three<String, String, String> OTHER_FORM =
      MISTAKES.declare(
          "other-form", Hole.word("what"), Holes.quoted("text"), Holes.quoted("asked"));
  static final Mistake FORM_WITHOUT_HEADING = MISTAKES.declare("form-without-heading");
  static final Two<String, String> IMPOSSIBLE =
      MISTAKES.declare("impossible", Hole.word("column"), Holes.quoted("text"));
  static final Mistake TOO_FAST = MISTAKES.declare("too-fast");
  static final Four<String, Allowed, String, String> NO_UNIT =
      MISTAKES.declare(
          "no-unit",
          Holes.quoted("heading"),
          Hole.allowed("units"),
          Hole.word("column"),
          Hole.word("example"));
  static final Four<String, Allowed, String, String> UNKNOWN_UNIT =
      MISTAKES.declare(
          "unknown-unit",
          Holes.quoted("unit"),
          Hole.allowed("units"),
          Hole.word("column"),
          Hole.word("example"));
  static final Two<String, String> NO_NUMBER =
      MISTAKES.declare("no-number", Hole.word("column"), Holes.quoted("text"));
  static final Three<String, Integer, Collection<String>> UNKNOWN_NOTCH =
      MISTAKES.declare(
          "unknown-notch", Holes.quoted("text"), Hole.count("most"), Hole.list("notches"));
  static final Mistake EMPTY_FILE = MISTAKES.declare("empty-file");
  static final Mistake HEADINGS_ONLY = MISTAKES.declare("headings-only");
  static final Mistake NOT_UTF_8 = MISTAKES.declare("not-utf-8");
  static final Mistake OPEN_QUOTATION = MISTAKES.declare("open-quotation");
  static final One<Integer> ONE_CELL = MISTAKES.declare("one-cell", Hole.count("headings"));
  static final Two<Integer, Integer> OTHER_NUMBER_OF_CELLS =
      MISTAKES.declare("other-number-of-cells", Hole.count("cells"), Hole.count("headings"));
  static final One<Collection<String>> NO_HEADING =
      MISTAKES.declare("no-heading", Hole.list("known"));
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_COLUMN =
      MISTAKES.declare(
          "unknown-column", Holes.quoted("column"), Hole.list("known"), Hole.perhaps("near"));
  static final Two<String, Collection<String>> COLUMN_MISSING =
      MISTAKES.declare("column-missing", Holes.quoted("column"), Hole.list("known"));
  static final Two<Integer, SourcePosition> APPROACH_TWICE =
      MISTAKES.declare("approach-twice", Hole.count("approach"), Holes.line("line"));
  static final Mistake NOTHING_FILLED_IN = MISTAKES.declare("nothing-filled-in");
  static final One<Integer> NO_APPROACH = MISTAKES.declare("no-approach", Hole.count("last"));
  static final Two<String, Integer> UNKNOWN_APPROACH =
      MISTAKES.declare("unknown-approach", Holes.quoted("text"), Hole.count("last"));
  static final Two<String, Integer> NEEDS_NO_BRAKE =
      MISTAKES.declare("needs-no-brake", Hole.word("column"), Hole.count("approach"));
  static final Two<String, Integer> IS_NO_STOP =
      MISTAKES.declare("is-no-stop", Hole.word("column"), Hole.count("approach"));
  static final Five<String, String, Integer, Place, Place> NOT_ON_THE_APPROACH =
      MISTAKES.declare(
          "not-on-the-approach",
          Hole.word("column"),
          Holes.quoted("text"),
          Hole.count("approach"),
          LineHoles.place("from"),
          LineHoles.place("to"));
  static final Three<String, String, String> NO_SIDE_OF_THE_MARK =
      MISTAKES.declare(
          "no-side-of-the-mark", Hole.word("column"), Holes.quoted("text"), Hole.word("length"));
  static final Two<String, String> NO_STOP_ERROR =
      MISTAKES.declare("no-stop-error", Hole.word("column"), Holes.quoted("text"));
  static final Two<String, String> NO_COUNT =
      MISTAKES.declare("no-count", Hole.word("column"), Holes.quoted("text"));

  private RideMistakes() {}
}
