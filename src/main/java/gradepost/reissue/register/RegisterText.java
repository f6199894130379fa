package gradepost.reissue.register;

import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.PrintedText;
import gradepost.units.PrintedText.Obstacle;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the register cannot enter or answer. Its sentences stand in {@code mistakes.properties}. */
final class RegisterText {
  private static final Mistakes MISTAKES = Mistakes.beside(RegisterText.class);
  private static final Hole<String> ENTERED = Hole.word("entered");
  private static final Hole<Entry> ISSUE = new Hole<>("issue", Entry::name);
  private static final Hole<String> WHY = Hole.word("why");

  static final String BY = MISTAKES.phrase("entered.by");
  static final String BY_HELP = MISTAKES.phrase("entered.by.help");
  static final String BY_OPTION = MISTAKES.phrase("entered.by-option");
  static final String COPY = MISTAKES.phrase("entered.copy");
  static final String COPY_HELP = MISTAKES.phrase("entered.copy.help");
  static final String HOLDER = MISTAKES.phrase("entered.holder");
  static final String PERSON = MISTAKES.phrase("entered.person");
  static final String LATIN_BESIDE_HELP = MISTAKES.phrase("entered.latin-beside.help");
  static final String LATIN = MISTAKES.phrase("entered.latin");
  static final String ASSESSOR = MISTAKES.phrase("entered.assessor");
  static final String LATIN_HELP = MISTAKES.phrase("entered.latin.help");
  static final String CHECKER = MISTAKES.phrase("entered.checker");
  static final String REMARK = MISTAKES.phrase("entered.remark");
  static final String REASON = MISTAKES.phrase("entered.reason");
  static final String REASON_HELP = MISTAKES.phrase("entered.reason.help");
  static final String NONE_OUT = MISTAKES.phrase("none-out");
  static final String PRINTED_BLANK = MISTAKES.phrase("printed.blank");
  static final Phrase<String> PRINTED_CODED =
      MISTAKES.phrase("printed.coded", new Hole<>("coded", PrintedText::coded));

  static final String NAME_REMOVED = MISTAKES.phrase("name-removed");
  static final String WRITTEN_REMOVED = MISTAKES.phrase("written-removed");
  static final Phrase<Integer> FORGOT = MISTAKES.phrase("forgot", Hole.count("count"));
  private static final Hole<List<String>> RECORD =
      new Hole<List<String>>("issue", row -> row.get(3) + "/" + row.get(4));

  /** What is kept of somebody, by the table that holds it. */
  static final Map<String, Phrase<List<String>>> KEPT_RECORD =
      Map.of(
          "acknowledgement_entry",
          MISTAKES.phrase("kept.acknowledgement", RECORD),
          "sign_off_entry",
          MISTAKES.phrase("kept.sign-off", RECORD.and(new Hole<>("covers", row -> row.get(5)))),
          "copy_entry",
          MISTAKES.phrase("kept.copy", RECORD.and(new Hole<>("copy", row -> row.get(5)))));

  static final String LOCKED = MISTAKES.phrase("why.locked");
  static final Phrase<String> LOCKED_BY = MISTAKES.phrase("why.locked-by", Hole.word("holder"));

  /** How long whom is waited for. */
  record Wait(String holder, String seconds) {}

  static final Phrase<String> WAITING = MISTAKES.phrase("waiting", Hole.word("seconds"));
  static final Phrase<Wait> WAITING_FOR =
      MISTAKES.phrase(
          "waiting-for",
          new Hole<>("holder", Wait::holder).and(new Hole<>("seconds", Wait::seconds)));
  static final String DISK_FULL = MISTAKES.phrase("why.disk-full");
  static final String READ_ONLY = MISTAKES.phrase("why.read-only");
  static final String DAMAGED = MISTAKES.phrase("why.damaged");
  static final String NOT_TO_BE_OPENED = MISTAKES.phrase("why.not-to-be-opened");
  static final String DISK_FAULT = MISTAKES.phrase("why.disk-fault");
  static final String NOT_REACHED = MISTAKES.phrase("why.not-reached");
  static final String NO_ENTRY = MISTAKES.phrase("why.no-entry");
  static final String NO_DATABASE = MISTAKES.phrase("why.no-database");
  static final String MEANWHILE = MISTAKES.phrase("why.meanwhile");
  static final String NO_DRIVER = MISTAKES.phrase("why.no-driver");
  static final Phrase<String> REFUSED = MISTAKES.phrase("why.refused", Hole.word("code"));

  /** A copy that is out, by its number and its holder. */
  static final Phrase<List<String>> COPY_OUT =
      MISTAKES.phrase(
          "copy-out",
          new Hole<List<String>>("copy", row -> row.get(0))
              .and(new Hole<>("holder", row -> row.get(1))));

  /** A copy that somebody has, of which issue. */
  static final Phrase<ToBrief.Copy> HELD =
      MISTAKES.phrase(
          "held",
          new Hole<>("copy", ToBrief.Copy::number).and(new Hole<>("issue", ToBrief.Copy::issue)));

  static final One<String> BLANK = MISTAKES.declare("blank", ENTERED);
  static final Three<String, Integer, Integer> TOO_LONG =
      MISTAKES.declare("too-long", ENTERED, Hole.count("count"), Hole.count("most"));
  static final Four<String, String, Obstacle, String> NOT_PRINTABLE =
      MISTAKES.declare(
          "not-printable",
          ENTERED,
          PrintedText.quoted("text"),
          PrintedText.obstacleIn("obstacle").and(new Hole<>("allowed", o -> PrintedText.allowed())),
          Hole.word("near"));
  static final Two<String, Integer> NOT_WRITABLE =
      MISTAKES.declare("not-writable", PrintedText.quoted("text"), Hole.count("most"));
  static final One<String> COPY_NUMBER =
      MISTAKES.declare("copy-number", PrintedText.quoted("text"));
  static final One<String> SCORE = MISTAKES.declare("score", PrintedText.quoted("text"));
  static final One<Entry> NO_ISSUE = MISTAKES.declare("no-issue", ISSUE);
  static final Two<String, String> OVERTAKEN =
      MISTAKES.declare("overtaken", Hole.word("issue"), Hole.word("who"));
  static final Three<String, Entry, String> HANDED_OUT =
      MISTAKES.declare("handed-out", Hole.word("copy"), ISSUE, Hole.word("holder"));
  static final Three<String, Entry, String> NOT_OUT =
      MISTAKES.declare("not-out", Hole.word("copy"), ISSUE, Hole.word("out"));
  static final Two<String, Entry> ACKNOWLEDGED =
      MISTAKES.declare("acknowledged", Hole.word("person"), ISSUE);
  static final Two<Entry, String> RECALLED =
      MISTAKES.declare("recalled", ISSUE, Hole.word("reason"));
  static final Two<Entry, String> SUPERSEDED =
      MISTAKES.declare("superseded", ISSUE, Hole.word("reason"));
  static final Three<String, Entry, String> SIGNED_OFF =
      MISTAKES.declare("signed-off", Hole.word("person"), ISSUE, Hole.word("covers"));
  static final One<Entry> DRAFT = MISTAKES.declare("draft", ISSUE);
  static final Two<Entry, String> NO_DRAFT =
      MISTAKES.declare("no-draft", ISSUE, Hole.word("checker"));
  static final Two<String, Entry> OWN_CHECKER =
      MISTAKES.declare("own-checker", Hole.word("person"), ISSUE);
  static final One<String> ON_LIST = MISTAKES.declare("on-list", Hole.word("person"));
  static final One<String> NO_LIST = MISTAKES.declare("no-list", Hole.word("person"));
  static final Two<String, Optional<String>> NOT_ON_LIST =
      MISTAKES.declare("not-on-list", Hole.word("person"), Hole.perhaps("near"));
  static final One<String> ACCOUNT_THERE = MISTAKES.declare("account-there", Hole.word("person"));
  static final Two<String, Optional<String>> NO_ACCOUNT =
      MISTAKES.declare("no-account", Hole.word("person"), Hole.perhaps("near"));
  static final One<String> NO_ACT = MISTAKES.declare("no-act", Hole.word("number"));
  static final Three<String, String, String> FORGOTTEN =
      MISTAKES.declare("forgotten", Hole.word("number"), Hole.word("act"), Hole.word("by"));
  static final Three<String, String, String> UNDONE =
      MISTAKES.declare("undone", Hole.word("number"), Hole.word("act"), Hole.word("by"));
  static final Two<String, String> STANDS =
      MISTAKES.declare("stands", Hole.word("number"), Hole.word("act"));
  static final Three<String, String, String> CAME_BACK =
      MISTAKES.declare("came-back", Hole.word("number"), Hole.word("act"), Hole.word("by"));
  static final Two<String, String> OWN_ASSESSOR =
      MISTAKES.declare("own-assessor", Hole.word("assessor"), Hole.word("person"));
  static final One<String> NOT_READ = MISTAKES.declare("not-read", WHY);
  static final One<String> NOT_WRITTEN = MISTAKES.declare("not-written", WHY);
  static final One<String> NOT_CLOSED = MISTAKES.declare("not-closed", WHY);
  static final One<String> NOT_OPENED = MISTAKES.declare("not-opened", WHY);
  static final Mistake NOT_FRESH = MISTAKES.declare("not-fresh");
  static final Mistake OTHER_TABLES = MISTAKES.declare("other-tables");
  static final Mistake NO_REGISTER = MISTAKES.declare("no-register");
  static final Mistake LATER_VERSION = MISTAKES.declare("later-version");

  private RegisterText() {}
}
