package gradepost.app;

import gradepost.text.Mistake;

/** Something is wrong in a row. */
final class RowRefused extends Exception {
  private static final long serialVersionUID = 1L;

  RowRefused(Mistake mistake) {
    super(mistake.inWords());
  }
}
