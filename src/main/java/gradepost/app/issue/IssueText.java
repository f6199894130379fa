package gradepost.app.issue;

import gradepost.reissue.register.Entry;
import gradepost.source.file.FileNames;
import gradepost.text.Hole;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.text.Phrase;

/** Why an issue is not made. Its sentences stand in {@code mistakes.properties}. */
final class IssueText {
  private static final Mistakes MISTAKES = Mistakes.beside(IssueText.class);

  static final Three<Entry, String, OtherLine.Lines> OTHER_LINE =
      MISTAKES.declare(
          "other-line",
          new Hole<>("issue", Entry::name),
          Hole.word("file"),
          new Hole<>("own", OtherLine.Lines::own)
              .and(new Hole<>("other", OtherLine.Lines::other))
              .and(new Hole<>("free", lines -> FileNames.asName(lines.own()))));

  static final Four<String, String, String, String> NOT_WHOLE =
      MISTAKES.declare(
          "not-whole",
          Hole.word("issue"),
          Hole.word("what"),
          Hole.word("file"),
          Hole.word("digest"));

  static final Two<String, String> EDITED =
      MISTAKES.declare("edited", Hole.word("pack"), Hole.word("issue"));

  private static final Hole<NamedPapers.Named> NAMED =
      new Hole<NamedPapers.Named>("paper", named -> named.paper().name())
          .and(new Hole<>("issue", named -> named.issue().name()));
  static final Phrase<NamedPapers.Named> PAPER_DUE = MISTAKES.phrase("paper.due", NAMED);
  static final Phrase<NamedPapers.Named> PAPER_REMOVED = MISTAKES.phrase("paper.removed", NAMED);
  static final Phrase<NamedPapers.Named> PAPER_LEFT =
      MISTAKES.phrase("paper.left", NAMED.and(new Hole<>("place", NamedPapers.Named::place)));
  static final String PAPERS_ELSEWHERE = MISTAKES.phrase("paper.elsewhere");

  private IssueText() {}
}
