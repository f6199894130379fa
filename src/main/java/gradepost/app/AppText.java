package gradepost.app;

import gradepost.reissue.register.Leavers.Held;
import gradepost.reissue.register.ToBrief;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Five;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.MomentStyle;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** What a use case refuses. Its sentences stand in {@code mistakes.properties}. */
final class AppText {
  private static final Mistakes MISTAKES = Mistakes.beside(AppText.class);
  private static final Hole<String> PLACE = Hole.word("place");
  private static final Hole<Collection<String>> SECTIONS = Hole.list("sections");
  private static final Hole<LocalDate> TODAY = new Hole<>("today", LocalDate::toString);
  private static final Hole<LocalDate> DAY = new Hole<>("day", LocalDate::toString);
  private static final Hole<LocalDate> FIRST = new Hole<>("first", LocalDate::toString);
  static final Two<String, Collection<String>> OFF_THE_ROUTE =
      MISTAKES.declare("off-the-route", PLACE, SECTIONS);
  static final Three<String, Collection<String>, String> ON_SEVERAL_SECTIONS =
      MISTAKES.declare("on-several-sections", PLACE, SECTIONS, Hole.word("section"));
  static final One<String> INPUTS_LOST = MISTAKES.declare("inputs-lost", Hole.word("issue"));
  static final Four<String, String, Collection<String>, Optional<String>> UNKNOWN_DIRECTION =
      MISTAKES.declare(
          "unknown-direction",
          Hole.word("issue"),
          Hole.word("direction"),
          Hole.list("known"),
          Hole.perhaps("near"));
  static final Three<LocalDate, LocalDate, LocalDate> LAPSES_TOO_EARLY =
      MISTAKES.declare("lapses-too-early", TODAY, DAY, FIRST);
  static final Five<LocalDate, LocalDate, LocalDate, LocalDate, String> LAPSES_OUT_OF_RANGE =
      MISTAKES.declare(
          "lapses-out-of-range",
          TODAY,
          DAY,
          FIRST,
          new Hole<>("last", LocalDate::toString),
          Hole.word("policy"));
  static final Two<String, Collection<String>> NO_FORMATION =
      MISTAKES.declare("no-formation", Hole.word("issue"), Hole.list("known"));
  static final Four<String, String, Collection<String>, Optional<String>> UNKNOWN_FORMATION =
      MISTAKES.declare(
          "unknown-formation",
          Hole.word("issue"),
          Hole.word("formation"),
          Hole.list("known"),
          Hole.perhaps("near"));
  static final Three<String, String, String> SAME_ID =
      MISTAKES.declare("same-id", Hole.word("other"), Hole.word("id"), Hole.word("free"));
  static final One<String> BRIEF_EXPIRED = MISTAKES.declare("brief-expired", Hole.word("pack"));

  static final Three<String, String, Optional<String>> NOT_IN_USE =
      MISTAKES.declare(
          "not-in-use", Hole.word("issue"), Hole.word("reason"), Hole.perhaps("latest"));
  static final Three<String, String, Optional<String>> CALLED_BACK =
      MISTAKES.declare(
          "called-back", Hole.word("issue"), Hole.word("reason"), Hole.perhaps("latest"));
  static final Two<String, LocalDateTime> ISSUE_EXPIRED =
      MISTAKES.declare(
          "issue-expired", Hole.word("issue"), new Hole<>("to", MomentStyle.MOMENT::format));

  static final Three<String, String, Collection<String>> HAS_COPY =
      MISTAKES.declare("has-copy", Hole.word("person"), Hole.word("issue"), Hole.list("copies"));
  static final Two<String, LocalDateTime> SIGNED_EXPIRED =
      MISTAKES.declare(
          "signed-expired", Hole.word("issue"), new Hole<>("to", MomentStyle.MOMENT::format));
  static final Three<String, String, Optional<String>> SIGNED_CALLED_BACK =
      MISTAKES.declare(
          "signed-called-back", Hole.word("issue"), Hole.word("reason"), Hole.perhaps("latest"));
  static final Three<String, String, Optional<String>> SIGNED_SUPERSEDED =
      MISTAKES.declare(
          "signed-superseded", Hole.word("issue"), Hole.word("reason"), Hole.perhaps("latest"));
  static final Two<String, LocalDateTime> ENTER_EXPIRED =
      MISTAKES.declare(
          "enter-expired", Hole.word("pack"), new Hole<>("to", MomentStyle.MOMENT::format));

  static final Two<String, Optional<String>> UNKNOWN_PACK =
      MISTAKES.declare("unknown-pack", Hole.word("pack"), Hole.perhaps("near"));
  static final Two<String, Optional<String>> UNKNOWN_PERSON =
      MISTAKES.declare("unknown-person", Hole.word("person"), Hole.perhaps("near"));
  static final Mistake EMPTY_TABLE = MISTAKES.declare("empty-table");
  static final Three<String, Collection<String>, Optional<String>> UNKNOWN_COLUMN =
      MISTAKES.declare(
          "unknown-column", Hole.word("column"), Hole.list("known"), Hole.perhaps("near"));
  static final Two<String, Collection<String>> NO_COLUMN =
      MISTAKES.declare("no-column", Hole.word("column"), Hole.list("needed"));
  static final One<String> EMPTY_CELL = MISTAKES.declare("empty-cell", Hole.word("column"));
  static final One<String> NO_DATE = MISTAKES.declare("no-date", Hole.word("text"));
  static final Two<String, Collection<String>> NO_YES =
      MISTAKES.declare("no-yes", Hole.word("text"), Hole.list("known"));
  static final One<String> NO_SUCH_ISSUE = MISTAKES.declare("no-such-issue", Hole.word("issue"));
  static final Two<String, String> NOT_HELD =
      MISTAKES.declare("not-held", Hole.word("issue"), Hole.word("person"));
  static final Two<String, Collection<String>> SEVERAL_HELD =
      MISTAKES.declare("several-held", Hole.word("person"), Hole.list("copies"));

  private static final Mistake NO_FINGERPRINT = MISTAKES.declare("no-fingerprint");
  private static final Mistake NO_FINGERPRINT_IN_JSON = MISTAKES.declare("no-fingerprint-in-json");
  private static final Mistake NO_SUCH_JSON = MISTAKES.declare("no-such-json");
  static final String NEVER_REGISTERED = MISTAKES.phrase("never-registered");
  static final Phrase<String> NO_REGISTER_THERE =
      MISTAKES.phrase("no-register-there", Hole.word("where"));
  static final String NO_REGISTER_ASKED = MISTAKES.phrase("no-register-asked");
  static final Phrase<Verify.Made> MADE_FROM =
      MISTAKES.phrase(
          "made-from",
          new Hole<Verify.Made>("paper", made -> made.paper().toString())
              .and(new Hole<>("pack", made -> made.pack().toString()))
              .and(Hole.count("issue").of(Verify.Made::issue)));

  /** The first digits tell fingerprints apart. */
  private static final Hole<String> FINGERPRINT =
      new Hole<>("fingerprint", whole -> whole.substring(0, 16) + "…");

  static final Phrase<Verify.Printed> OTHER_FINGERPRINT =
      MISTAKES.phrase(
          "other-fingerprint",
          FINGERPRINT
              .<Verify.Printed>of(Verify.Printed::fingerprint)
              .and(new Hole<>("pack", other -> other.pack().toString())));
  static final One<String> NO_PACK_READ = MISTAKES.declare("no-pack-read", FINGERPRINT);
  static final Two<String, Collection<String>> NO_PACK_HAS_IT =
      MISTAKES.declare("no-pack-has-it", FINGERPRINT, Hole.list("others"));

  static final Phrase<Path> FILE_THERE =
      MISTAKES.phrase("file-there", new Hole<>("file", Path::toString));
  private static final Hole<ToBrief> TO_BRIEF =
      new Hole<>("person", ToBrief::person).and(new Hole<>("issue", ToBrief::issue));
  static final Phrase<ToBrief> DRAFT_NOT_PRINTED = MISTAKES.phrase("print.draft", TO_BRIEF);
  static final Phrase<ToBrief> NO_SLIP = MISTAKES.phrase("print.no-slip", TO_BRIEF);
  static final Phrase<PrintedFor.OldCopy> NO_SUPPLEMENT =
      MISTAKES.phrase(
          "print.no-supplement",
          new Hole<>("person", PrintedFor.OldCopy::person)
              .and(new Hole<>("copy", old -> old.copy().number()))
              .and(new Hole<>("held", old -> old.copy().issue()))
              .and(new Hole<>("issue", old -> old.issue().name())));
  static final Phrase<PrintedFor.Pages> PAGES =
      MISTAKES.phrase(
          "print.pages",
          TO_BRIEF
              .of(PrintedFor.Pages::to)
              .and(Hole.count("from").of(PrintedFor.Pages::from))
              .and(Hole.count("to").of(PrintedFor.Pages::last)));
  static final Phrase<PrintedFor.Lost> PAPER_LOST =
      MISTAKES.phrase(
          "print.lost",
          new Hole<>("issue", PrintedFor.Lost::issue)
              .and(new Hole<>("paper", PrintedFor.Lost::paper)));
  static final Mistake NO_GRID = MISTAKES.declare("no-grid");
  static final String NOTHING_TO_GIVE = MISTAKES.phrase("print.nothing");

  private static final Hole<Held> RECORD =
      new Hole<>("person", Held::person)
          .and(new Hole<>("left", held -> held.left().toString()))
          .and(new Hole<>("record", Held::words));
  static final Phrase<Held> RECORD_DUE = MISTAKES.phrase("record.due", RECORD);
  static final Phrase<Held> RECORD_REMOVED = MISTAKES.phrase("record.removed", RECORD);
  static final Phrase<Held> RECORD_OUT = MISTAKES.phrase("record.out", RECORD);
  static final Phrase<Held> RECORD_FOR_EVER =
      MISTAKES.phrase("record.for-ever", RECORD.and(new Hole<>("pack", Held::pack)));
  static final Phrase<Retention.Kept> RECORD_UNTIL =
      MISTAKES.phrase(
          "record.until",
          RECORD
              .of(Retention.Kept::held)
              .and(new Hole<>("until", kept -> kept.until().toString())));
  static final String NO_RECORDS = MISTAKES.phrase("record.none");

  private static final Hole<String> ISSUE = Hole.word("issue");
  private static final Hole<String> PERSON = Hole.word("person");
  static final One<String> NOT_MADE_AGAIN = MISTAKES.declare("again.not", ISSUE);
  static final Two<String, String> OTHER_INPUTS =
      MISTAKES.declare("again.other-inputs", Hole.word("fingerprint"), Hole.word("registered"));
  static final One<String> TAKEN_IN = MISTAKES.declare("again.taken-in", ISSUE);
  static final Two<String, String> PAPER_DIFFERS =
      MISTAKES.declare("again.differs", ISSUE, Hole.word("paper"));
  static final Two<String, Integer> MADE_AGAIN =
      MISTAKES.declare("again.same", ISSUE, Hole.count("papers"));
  static final One<String> SAME_MAKER = MISTAKES.declare("again.same-maker", Hole.word("maker"));
  static final Two<String, String> OTHER_MAKER =
      MISTAKES.declare("again.other-maker", Hole.word("maker"), Hole.word("this"));
  static final Two<String, String> HANDED_OUT =
      MISTAKES.declare("entered.handed-out", Hole.word("copy"), PERSON);
  static final One<String> RECALLED = MISTAKES.declare("entered.recalled", Hole.word("reason"));
  private static final Hole<String> PACK = Hole.word("pack");
  private static final Hole<LocalDateTime> FROM = new Hole<>("from", MomentStyle.MOMENT::format);
  static final One<String> NOTHING_NOW = MISTAKES.declare("gap.now", PACK);
  static final Two<String, LocalDateTime> NOTHING_FROM = MISTAKES.declare("gap.from", PACK, FROM);
  static final Three<String, LocalDateTime, LocalDateTime> NOTHING_BETWEEN =
      MISTAKES.declare("gap.between", PACK, FROM, new Hole<>("to", MomentStyle.MOMENT::format));
  static final One<String> ACKNOWLEDGED = MISTAKES.declare("entered.acknowledged", PERSON);
  static final Three<String, String, LocalDate> SIGNED_OFF =
      MISTAKES.declare(
          "entered.signed-off",
          PERSON,
          Hole.word("covers"),
          new Hole<>("until", LocalDate::toString));
  static final Two<String, String> TAKEN_BACK =
      MISTAKES.declare("entered.taken-back", Hole.word("entry"), Hole.word("what"));
  static final One<Integer> JOINED = MISTAKES.declare("entered.joined", Hole.count("people"));
  static final Phrase<List<String>> STILL_HELD =
      MISTAKES.phrase(
          "entered.still-held",
          new Hole<List<String>>("issue", row -> row.get(0))
              .and(new Hole<>("copy", row -> row.get(1)))
              .and(new Hole<>("person", row -> row.get(2))));
  static final One<Integer> LEFT = MISTAKES.declare("entered.left", Hole.count("people"));

  /** What a file lacks by which it could be known. */
  static Mistake noFingerprint(boolean json, boolean register) {
    return !json ? NO_FINGERPRINT : register ? NO_SUCH_JSON : NO_FINGERPRINT_IN_JSON;
  }

  private AppText() {}
}
