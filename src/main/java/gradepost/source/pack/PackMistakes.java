package gradepost.source.pack;

import gradepost.route.LineHoles;
import gradepost.route.LineHoles.Place;
import gradepost.text.Allowed;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.units.MomentStyle;
import gradepost.units.PrintedText;
import gradepost.units.PrintedText.Obstacle;
import gradepost.yaml.Holes;
import gradepost.yaml.SourcePosition;
import java.time.LocalDateTime;
import java.util.Collection;
import java.util.Optional;

/**
 * What can be wrong with a pack and between its files. Its sentences stand in {@code
 * mistakes.properties}.
 */
final class PackMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(PackMistakes.class);

  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_DIRECTION =
      MISTAKES.declare(
          "unknown-direction", Holes.quoted("name"), Hole.list("known"), Hole.perhaps("near"));
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_RUNNING_LINE =
      MISTAKES.declare(
          "unknown-running-line", Holes.quoted("name"), Hole.list("known"), Hole.perhaps("near"));
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_JUNCTION =
      MISTAKES.declare(
          "unknown-junction", Holes.quoted("name"), Hole.list("known"), Hole.perhaps("near"));
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_STATION =
      MISTAKES.declare(
          "unknown-station", Holes.quoted("name"), Hole.list("known"), Hole.perhaps("near"));
  static final One<String> NO_JUNCTIONS = MISTAKES.declare("no-junctions", Holes.quoted("name"));
  static final Four<String, Collection<String>, Optional<String>, String> UNKNOWN_WAY =
      MISTAKES.declare(
          "unknown-way",
          Holes.quoted("name"),
          Hole.list("known"),
          Hole.perhaps("near"),
          Hole.word("junction"));
  static final Four<String, Collection<String>, Optional<String>, String> UNKNOWN_PLATFORM =
      MISTAKES.declare(
          "unknown-platform",
          Holes.quoted("name"),
          Hole.list("known"),
          Hole.perhaps("near"),
          Hole.word("station"));
  static final Two<String, String> LINE_NOT_SIGNALLED =
      MISTAKES.declare("line-not-signalled", Hole.word("direction"), Hole.word("line"));
  static final Two<String, String> JUNCTION_FOR_OTHERS =
      MISTAKES.declare("junction-for-others", Hole.word("junction"), Hole.word("direction"));
  static final Four<String, String, Allowed, Collection<String>> NO_ID =
      MISTAKES.declare(
          "no-id",
          Hole.word("key"),
          Holes.quoted("text"),
          Hole.allowed("allowed"),
          Hole.list("near"));
  static final One<Allowed> NO_DWELL = MISTAKES.declare("no-dwell", Hole.allowed("allowed"));
  static final Mistake BOOKED_TO_THE_FIRST = MISTAKES.declare("booked-to-the-first");
  static final Three<String, String, String> PLATFORM_NOT_REACHED =
      MISTAKES.declare(
          "platform-not-reached",
          Hole.word("platform"),
          Hole.word("station"),
          Hole.word("direction"));
  static final Three<String, String, String> CALLS_OUT_OF_ORDER =
      MISTAKES.declare(
          "calls-out-of-order", Hole.word("later"), Hole.word("earlier"), Hole.word("direction"));
  static final Three<String, Place, Place> LINES_LEAVE_A_GAP =
      MISTAKES.declare(
          "lines-leave-a-gap",
          Hole.word("direction"),
          LineHoles.place("from"),
          LineHoles.place("to"));
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_FORMATION =
      MISTAKES.declare(
          "unknown-formation", Holes.quoted("formation"), Hole.list("known"), Hole.perhaps("near"));
  static final One<String> FORMATION_TWICE =
      MISTAKES.declare("formation-twice", Holes.quoted("formation"));
  static final Two<String, String> FORMATION_FILE_TWICE =
      MISTAKES.declare("formation-file-twice", Holes.quoted("formation"), Holes.quoted("first"));
  static final Three<String, Collection<String>, Optional<String>> FORMATION_NOT_PRINTED =
      MISTAKES.declare(
          "formation-not-printed",
          Holes.quoted("formation"),
          Hole.list("known"),
          Hole.perhaps("near"));
  static final One<String> EDITION_NAMES_NO_FILE =
      MISTAKES.declare("edition-names-no-file", Holes.quoted("name"));
  static final Two<String, String> EDITION_FILE_TWICE =
      MISTAKES.declare("edition-file-twice", Holes.quoted("name"), Holes.quoted("first"));
  static final Two<String, String> NO_CLAUSE =
      MISTAKES.declare("no-clause", Hole.word("policy"), Hole.word("kind"));
  static final Three<String, String, String> CLAUSE_FORBIDS =
      MISTAKES.declare(
          "clause-forbids", Hole.word("policy"), Hole.word("kind"), Hole.word("clause"));
  static final Two<String, String> NOTHING_BEHIND =
      MISTAKES.declare("nothing-behind", Hole.word("stock"), Hole.word("brake"));
  static final Three<Integer, String, Integer> NO_SUCH_VEHICLE =
      MISTAKES.declare(
          "no-such-vehicle", Hole.count("number"), Hole.word("formation"), Hole.count("cars"));
  static final One<Integer> VEHICLE_TWICE = MISTAKES.declare("vehicle-twice", Hole.count("number"));
  static final Four<Integer, String, String, Integer> MORE_THAN_PERMITTED =
      MISTAKES.declare(
          "more-than-permitted",
          Hole.count("named"),
          Hole.word("formation"),
          Hole.word("clause"),
          Hole.count("most"));
  static final Two<String, Integer> NO_BRAKE_LEFT =
      MISTAKES.declare("no-brake-left", Hole.word("formation"), Hole.count("share"));
  static final Two<String, Collection<String>> BOARDS_LEFT_OPEN =
      MISTAKES.declare("boards-left-open", Hole.word("notice"), Hole.list("boards"));
  static final Two<String, LocalDateTime> GAP_BEFORE_A_CHANGE =
      MISTAKES.declare(
          "gap-before-a-change",
          Hole.word("notice"),
          new Hole<>("ended", MomentStyle.MOMENT::format));
  static final One<String> WITHDRAWS_NOTHING =
      MISTAKES.declare("withdraws-nothing", Hole.word("notice"));
  static final Two<String, Collection<String>> WITHDRAWS_ANOTHER =
      MISTAKES.declare("withdraws-another", Hole.word("notice"), Hole.list("standing"));
  static final Three<String, Collection<String>, Integer> WITHDRAWS_ANOTHER_OF_MANY =
      MISTAKES.declare(
          "withdraws-another-of-many",
          Hole.word("notice"),
          Hole.list("standing"),
          Hole.count("more"));
  static final Three<String, LocalDateTime, LocalDateTime> CHANGES_AFTER_THE_START =
      MISTAKES.declare(
          "changes-after-the-start",
          Hole.word("notice"),
          new Hole<>("changed", MomentStyle.MOMENT::format),
          new Hole<>("from", MomentStyle.MOMENT::format));
  static final One<Obstacle> NAME_NOT_PRINTABLE =
      MISTAKES.declare(
          "name-not-printable",
          PrintedText.obstacleIn("why").and(new Hole<>("printable", why -> PrintedText.allowed())));
  static final Mistake NO_RULES_FOR_SIGN_OFF = MISTAKES.declare("no-rules-for-sign-off");
  static final Three<String, String, SourcePosition> REFERENCE_TWICE =
      MISTAKES.declare(
          "reference-twice", Holes.quoted("reference"), Hole.word("file"), Holes.line("line"));
  static final Two<String, Optional<String>> NAME_NOT_RELATIVE =
      MISTAKES.declare("name-not-relative", Holes.quoted("file"), Hole.perhaps("near"));
  static final One<String> NAME_NOT_YAML = MISTAKES.declare("name-not-yaml", Holes.quoted("file"));
  static final One<String> NO_PICTURE_BESIDE =
      MISTAKES.declare("no-picture-beside", Holes.quoted("file"));
  static final One<String> NOT_A_PICTURE = MISTAKES.declare("not-a-picture", Holes.quoted("file"));
  static final Mistake VALID_TO_BEFORE_VALID_FROM = MISTAKES.declare("valid-to-before-valid-from");
  static final Mistake KNOWN_AFTER_ISSUED = MISTAKES.declare("known-after-issued");

  private static final Hole<LocalDateTime> BEGINNING =
      new Hole<>("begins", MomentStyle.MOMENT::format);
  private static final Hole<LocalDateTime> END = new Hole<>("ended", MomentStyle.MOMENT::format);
  private static final Hole<LocalDateTime> VALID_TO = new Hole<>("to", MomentStyle.MOMENT::format);
  static final Two<LocalDateTime, LocalDateTime> EXPIRED =
      MISTAKES.declare("expired", VALID_TO, new Hole<>("now", MomentStyle.MOMENT::format));
  static final Two<String, LocalDateTime> ENDED =
      MISTAKES.declare("ended", Hole.word("notice"), END);
  static final Two<String, LocalDateTime> ENDED_LONG_AGO =
      MISTAKES.declare("ended-long-ago", Hole.word("notice"), END);
  static final Two<String, LocalDateTime> BEGINS =
      MISTAKES.declare("begins", Hole.word("notice"), BEGINNING);
  static final Three<String, LocalDateTime, LocalDateTime> BEGINS_TOO_LATE =
      MISTAKES.declare("begins-too-late", Hole.word("notice"), BEGINNING, VALID_TO);
  static final Three<String, LocalDateTime, LocalDateTime> ENDS_TOO_EARLY =
      MISTAKES.declare(
          "ends-too-early",
          Hole.word("notice"),
          END,
          new Hole<>("from", MomentStyle.MOMENT::format));
  static final Three<String, LocalDateTime, LocalDateTime> AFTER_KNOWN_UP_TO =
      MISTAKES.declare(
          "after-known-up-to",
          Hole.word("notice"),
          BEGINNING,
          new Hole<>("known", MomentStyle.MOMENT::format));

  private PackMistakes() {}
}
