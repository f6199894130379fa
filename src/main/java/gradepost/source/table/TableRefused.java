package gradepost.source.table;

import gradepost.text.Mistake;

/** A table that cannot go into a file, with what is wrong with it. */
public final class TableRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient Mistake mistake;

  public TableRefused(Mistake mistake) {
    super(mistake.what());
    this.mistake = mistake;
  }

  /** What is wrong with the table. */
  public Mistake mistake() {
    return mistake;
  }
}
