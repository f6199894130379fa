package gradepost.app;

import gradepost.text.Mistake;

/** Something is wrong in a row of a table that is entered as a whole. */
final class RowRefused extends Exception {
  private static final long serialVersionUID = 1L;

  RowRefused(Mistake mistake) {
    super(mistake.inWords());
  }
}
