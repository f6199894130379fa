package gradepost.desk;

import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Two;
import gradepost.units.PrintedText;

/** What the desk refuses. Its sentences stand in {@code mistakes.properties}. */
final class DeskText {
  private static final Mistakes MISTAKES = Mistakes.beside(DeskText.class);

  static final Mistake HOST = MISTAKES.declare("host");
  static final Mistake KEY = MISTAKES.declare("key");
  static final Mistake FORM = MISTAKES.declare("form");
  static final Mistake NOTHING_THERE = MISTAKES.declare("nothing-there");
  static final Mistake NO_NAME = MISTAKES.declare("no-name");
  static final Mistake NO_PEOPLE = MISTAKES.declare("no-people");
  static final One<String> NO_ENTRY = MISTAKES.declare("no-entry", PrintedText.quoted("entry"));
  static final One<String> WENT_WRONG = MISTAKES.declare("went-wrong", PrintedText.quoted("why"));
  static final One<String> LISTEN = MISTAKES.declare("listen", PrintedText.quoted("address"));
  static final Two<String, String> PORT_TAKEN =
      MISTAKES.declare("port-taken", PrintedText.quoted("address"), PrintedText.quoted("why"));
  static final One<String> NO_FOLDER = MISTAKES.declare("no-folder", PrintedText.quoted("folder"));

  private DeskText() {}
}
