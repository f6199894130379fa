package gradepost.cli;

import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;
import gradepost.units.PrintedText;
import java.util.Collection;
import java.util.Optional;

/** What a command line refuses. Its sentences stand in {@code mistakes.properties}. */
final class CliText {
  private static final Mistakes MISTAKES = Mistakes.beside(CliText.class);
  private static final Hole<String> TEXT = PrintedText.quoted("text");
  private static final Hole<String> WIDTH = Hole.word("width");

  static final Phrase<Collection<String>> NO_COMMAND =
      MISTAKES.phrase("no-command", Hole.list("commands"));
  static final Phrase<Collection<String>> NO_ACT = MISTAKES.phrase("no-act", Hole.list("commands"));
  static final Three<String, Collection<String>, Optional<String>> NO_SUCH_COMMAND =
      MISTAKES.declare("no-such-command", TEXT, Hole.list("commands"), Hole.perhaps("near"));
  static final One<String> TOO_MANY = MISTAKES.declare("too-many", TEXT);
  static final Phrase<String> HELP = MISTAKES.phrase("help", Hole.word("command"));
  static final Mistake NOT_SAID = MISTAKES.declare("not-said");
  static final One<String> NO_DAY = MISTAKES.declare("no-day", TEXT);
  static final One<String> NO_MOMENT = MISTAKES.declare("no-moment", TEXT);
  static final One<String> NO_NUMBER = MISTAKES.declare("no-number", TEXT);
  static final Two<String, Collection<String>> NO_PAPERS =
      MISTAKES.declare("no-papers", TEXT, Hole.list("known"));
  static final Two<String, Collection<String>> NO_LIST =
      MISTAKES.declare("no-list", TEXT, Hole.list("known"));
  static final Three<String, Integer, Integer> TOO_NARROW =
      MISTAKES.declare("too-narrow", WIDTH, Hole.count("least"), Hole.count("most"));
  static final Three<String, Integer, Integer> TOO_WIDE =
      MISTAKES.declare("too-wide", WIDTH, Hole.count("least"), Hole.count("most"));

  static final Mistake AS_OF_ALONE = MISTAKES.declare("as-of-alone");

  static final Mistake NO_ARCHIVE_IN_FILE = MISTAKES.declare("no-archive-in-file");

  static final Mistake NO_WORKERS = MISTAKES.declare("no-workers");
  static final Phrase<Integer> WAITS = MISTAKES.phrase("waits", Hole.count("count"));
  static final Mistake DETACH_ALONE = MISTAKES.declare("detach-alone");

  private static final Hole<String> COPY = Hole.word("copy");
  static final One<String> COPY_BACK = MISTAKES.declare("copy-back", COPY);
  static final One<String> COPY_DESTROYED = MISTAKES.declare("copy-destroyed", COPY);
  static final Mistake PLACED = MISTAKES.declare("placed");

  private CliText() {}
}
