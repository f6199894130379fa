package gradepost.app.store;

import gradepost.reissue.register.Entry;
import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.MomentStyle;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Optional;

/** What is said of register, archive, backup and papers. Its sentences stand beside it. */
final class StoreText {
  private static final Mistakes MISTAKES = Mistakes.beside(StoreText.class);
  private static final Hole<Path> FILE = new Hole<>("file", Path::toString);
  private static final Hole<String> ARCHIVE = Hole.word("archive");
  private static final Hole<String> WHERE = Hole.word("where");
  private static final Hole<String> ISSUE = Hole.word("issue");
  private static final Hole<String> NAME = Hole.word("name");
  private static final Hole<String> DIGEST = Hole.word("digest");

  static final String IN_DATABASE = MISTAKES.phrase("in-the-database");
  static final One<String> NO_REGISTER = MISTAKES.declare("no-register", WHERE);
  static final One<String> EMPTY_REGISTER = MISTAKES.declare("empty-register", WHERE);
  static final Two<String, String> NO_REGISTER_BUT =
      MISTAKES.declare("no-register-but", WHERE, ARCHIVE);
  static final Two<String, String> EMPTY_REGISTER_BUT =
      MISTAKES.declare("empty-register-but", WHERE, ARCHIVE);
  static final Three<String, String, String> OTHER_ARCHIVE =
      MISTAKES.declare("other-archive", ARCHIVE, ISSUE, Hole.word("by"));
  static final Mistake NO_FOLDER = MISTAKES.declare("no-folder");
  static final Mistake NO_FILE = MISTAKES.declare("no-file");
  static final Two<String, Optional<String>> NO_ISSUE =
      MISTAKES.declare("no-issue", ISSUE, Hole.perhaps("latest"));

  /** How long a lock is waited for that somebody has. */
  record Wait(String lock, String holder, Duration most) {}

  static final String THE_REGISTER = MISTAKES.phrase("the-register");
  private static final String OTHER_PROCESS = MISTAKES.phrase("another-process");
  private static final Hole<String> HOLDER =
      new Hole<>("holder", words -> words.isBlank() ? OTHER_PROCESS : words);
  static final Two<String, String> HELD = MISTAKES.declare("held", Hole.word("lock"), HOLDER);
  static final Phrase<Wait> WAITING =
      MISTAKES.phrase(
          "waiting",
          HOLDER
              .<Wait>of(Wait::holder)
              .and(new Hole<>("lock", Wait::lock))
              .and(new Hole<>("seconds", wait -> String.valueOf(wait.most().toSeconds()))));

  /** A paper that is genuine, of which issue, and when that was issued. */
  record Genuine(Path file, String paper, String issue, String issued) {}

  static final Phrase<Genuine> GENUINE =
      MISTAKES.phrase(
          "genuine",
          FILE.<Genuine>of(Genuine::file)
              .and(new Hole<>("paper", Genuine::paper))
              .and(new Hole<>("issue", Genuine::issue))
              .and(new Hole<>("issued", Genuine::issued)));
  static final One<String> FORMER_DRAFT = MISTAKES.declare("former-draft", ISSUE);
  static final Two<String, String> RECALLED =
      MISTAKES.declare("recalled", ISSUE, Hole.word("reason"));
  static final Two<String, String> SUPERSEDED =
      MISTAKES.declare("superseded", ISSUE, Hole.word("reason"));
  static final Two<String, LocalDateTime> EXPIRED =
      MISTAKES.declare("expired", ISSUE, new Hole<>("to", MomentStyle.MOMENT::format));

  /** An issue that a later one will supersede, with the words that say so. */
  record Until(String issue, String reason) {}

  static final Phrase<Until> STILL_IN_FORCE =
      MISTAKES.phrase(
          "still-in-force",
          new Hole<>("issue", Until::issue).and(new Hole<>("reason", Until::reason)));
  static final Phrase<Entry> BEGINS =
      MISTAKES.phrase(
          "begins",
          new Hole<>("issue", Entry::name)
              .and(new Hole<>("from", e -> MomentStyle.MOMENT.format(e.validFrom()))));
  static final One<Entry> CHANGED =
      MISTAKES.declare(
          "changed",
          new Hole<>("issue", Entry::name).and(Hole.count("count").of(e -> e.papers().size())));

  static final Three<Path, String, String> SAME_ID =
      MISTAKES.declare(
          "same-id", new Hole<>("other", Path::toString), Hole.word("id"), Hole.word("free"));

  static final One<Path> FILE_THERE = MISTAKES.declare("file-there", FILE);
  static final Mistake THERE = MISTAKES.declare("there");
  static final Phrase<Integer> BACKED_UP = MISTAKES.phrase("backed-up", Hole.count("count"));
  static final String NO_DATA_IN_IT = MISTAKES.phrase("backed-up.no-data");
  static final Phrase<Integer> DATA_LEFT = MISTAKES.phrase("data-left", Hole.count("count"));
  static final Phrase<Integer> RESTORED = MISTAKES.phrase("restored", Hole.count("count"));
  static final Two<String, String> LOST = MISTAKES.declare("lost", NAME, DIGEST);
  static final Mistake NOTHING_RESTORED = MISTAKES.declare("nothing-restored");
  static final Mistake NOT_UNPACKED = MISTAKES.declare("not-unpacked");
  static final Mistake NO_DIGESTS = MISTAKES.declare("no-digests");
  static final One<String> OTHER_CONTENT = MISTAKES.declare("other-content", NAME);
  static final One<String> MISSING = MISTAKES.declare("missing", NAME);
  static final Mistake REGISTER_THERE = MISTAKES.declare("register-there");
  static final One<String> ARCHIVE_THERE = MISTAKES.declare("archive-there", ARCHIVE);
  static final One<String> LEADS_OUT = MISTAKES.declare("leads-out", NAME);

  /** As a refusal of no file in particular. */
  static String error(Mistake mistake) {
    return "error: " + mistake.inWords();
  }

  /** As a refusal of a file. */
  static String error(Path file, Mistake mistake) {
    return file + ": " + error(mistake);
  }

  private StoreText() {}
}
