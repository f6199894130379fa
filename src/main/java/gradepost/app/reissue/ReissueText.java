package gradepost.app.reissue;

import gradepost.text.Hole;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Three;

/** What a reissue refuses. Its sentences stand in {@code mistakes.properties}. */
final class ReissueText {
  private static final Mistakes MISTAKES = Mistakes.beside(ReissueText.class);

  static final Three<Integer, String, String> AT_WORK =
      MISTAKES.declare("at-work", Hole.count("count"), Hole.word("issue"), Hole.word("who"));

  private ReissueText() {}
}
