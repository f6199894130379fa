package gradepost.route;

/** What a board of a restriction announces. */
public enum BoardKind {
  WARNING,
  REPEATING,
  COMMENCEMENT,
  TERMINATION
}
