package gradepost.source.notice;

import gradepost.route.LineHoles;
import gradepost.route.LineHoles.InUnits;
import gradepost.route.LineHoles.Place;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Five;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.Length;
import gradepost.units.PrintedText;
import gradepost.units.Speed;
import gradepost.yaml.Holes;
import java.util.Collection;
import java.util.Optional;

/** What can be wrong with notices. Its sentences stand in {@code mistakes.properties}. */
final class NoticeMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(NoticeMistakes.class);
  private static final int NAMED = 5;

  static final Two<String, Optional<String>> UNKNOWN_FEATURE =
      MISTAKES.declare("unknown-feature", Holes.quoted("feature"), Hole.perhaps("near"));
  static final Five<String, Place, InUnits<Length>, Place, InUnits<Length>> FEATURE_FAR_OFF =
      MISTAKES.declare(
          "feature-far-off",
          Hole.word("feature"),
          LineHoles.place("at"),
          LineHoles.lengthUp("off"),
          LineHoles.place("end"),
          LineHoles.lengthDown("most"));
  static final Four<String, String, Place, Place> BOARD_BEYOND_THE_BEGINNING =
      MISTAKES.declare(
          "board-beyond-the-beginning",
          Hole.word("board"),
          Hole.word("direction"),
          LineHoles.place("at"),
          LineHoles.place("begins"));
  static final Four<String, String, Place, Place> BOARD_NOT_AT_THE_BEGINNING =
      MISTAKES.declare(
          "board-not-at-the-beginning",
          Hole.word("board"),
          Hole.word("direction"),
          LineHoles.place("at"),
          LineHoles.place("begins"));
  static final Four<String, String, Place, Place> BOARD_NOT_AT_THE_END =
      MISTAKES.declare(
          "board-not-at-the-end",
          Hole.word("board"),
          Hole.word("direction"),
          LineHoles.place("at"),
          LineHoles.place("ends"));
  static final Two<String, InUnits<Speed>> SLOWS_NO_TRAIN =
      MISTAKES.declare("slows-no-train", Hole.word("notice"), LineHoles.speed("speed"));
  static final Mistake ISSUED_LATE = MISTAKES.declare("issued-late");
  static final Mistake NORMAL_SPEED_NOT_ABOVE = MISTAKES.declare("normal-speed-not-above");
  static final Mistake EMPTY_TABLE = MISTAKES.declare("empty-table");
  static final Two<Integer, Integer> TOO_MANY_CELLS =
      MISTAKES.declare("too-many-cells", Hole.count("cells"), Hole.count("headings"));
  static final Two<Integer, Integer> TOO_MANY_CELLS_WITHOUT_COMMA =
      MISTAKES.declare("too-many-cells-without-comma", Hole.count("cells"), Hole.count("headings"));
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_COLUMN =
      MISTAKES.declare(
          "unknown-column", Holes.quoted("column"), Hole.list("known"), Hole.perhaps("near"));
  static final Four<String, String, Place, Place> OVERLAP =
      MISTAKES.declare(
          "overlap",
          Hole.word("first"),
          Hole.word("second"),
          LineHoles.place("from"),
          LineHoles.place("to"));
  static final Two<String, Integer> MORE_OVERLAPS =
      MISTAKES.declare("more-overlaps", Hole.word("notice"), Hole.count("more"));
  static final One<Collection<String>> NO_ROUTE_NAMED =
      MISTAKES.declare("no-route-named", Hole.list("routes"));
  static final Three<String, Collection<String>, String> UNKNOWN_ROUTE =
      MISTAKES.declare(
          "unknown-route", Holes.quoted("route"), Hole.list("routes"), Hole.word("near"));
  static final Four<String, Collection<String>, String, String> A_LINE_FOR_A_ROUTE =
      MISTAKES.declare(
          "a-line-for-a-route",
          Holes.quoted("typed"),
          Hole.list("routes"),
          Hole.word("line"),
          Hole.word("route"));
  private static final Phrase<Collection<String>> SOME_AND_MORE =
      MISTAKES.phrase(
          "some-and-more",
          Hole.list("first")
              .<Collection<String>>of(names -> names.stream().limit(NAMED).toList())
              .and(Hole.count("more").of(names -> names.size() - NAMED)));
  static final Three<Collection<String>, Collection<String>, Optional<String>> PASSED_OVER =
      MISTAKES.declare(
          "passed-over",
          some("strays").of(strays -> strays.stream().map(PrintedText::shown).toList()),
          some("routes"),
          Hole.perhaps("near"));
  static final Mistake NOBODY_LOOKED = MISTAKES.declare("nobody-looked");
  static final Mistake NONE_BESIDE_NOTICES = MISTAKES.declare("none-beside-notices");

  /** A hole for some names, of which only the first few are told. */
  private static Hole<Collection<String>> some(String name) {
    return new Hole<>(
        name, names -> names.size() > NAMED ? SOME_AND_MORE.of(names) : String.join(", ", names));
  }

  private NoticeMistakes() {}
}
