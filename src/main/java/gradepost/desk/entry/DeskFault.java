package gradepost.desk.entry;

import gradepost.text.Mistake;

/** Why the desk does not start, in words. */
public final class DeskFault extends Exception {
  private static final long serialVersionUID = 1;

  public DeskFault(Mistake why) {
    super(why.inWords());
  }
}
