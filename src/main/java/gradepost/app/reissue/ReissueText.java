package gradepost.app.reissue;

import gradepost.text.Hole;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import java.nio.file.Path;

/** What a reissue refuses. Its sentences stand in {@code mistakes.properties}. */
final class ReissueText {
  private static final Mistakes MISTAKES = Mistakes.beside(ReissueText.class);

  static final Three<Integer, String, String> AT_WORK =
      MISTAKES.declare("at-work", Hole.count("count"), Hole.word("issue"), Hole.word("who"));

  private static final Hole<Path> FILE = new Hole<>("file", Path::toString);
  static final Three<String, String, String> ARCHIVE_LOST =
      MISTAKES.declare("archive-lost", Hole.word("archive"), Hole.word("file"), Hole.word("issue"));
  static final One<String> NOT_REGISTERED = MISTAKES.declare("not-registered", Hole.word("pack"));
  static final One<Path> WOULD_RESTORE = MISTAKES.declare("would-restore", FILE);
  static final One<Path> RESTORED = MISTAKES.declare("restored", FILE);
  static final Two<Path, String> RESTORED_KEPT =
      MISTAKES.declare("restored-kept", FILE, Hole.word("place"));
  static final Two<Path, Path> OUTSIDE =
      MISTAKES.declare("outside", FILE, new Hole<>("folder", Path::toString));

  private ReissueText() {}
}
