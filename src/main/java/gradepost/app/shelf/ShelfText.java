package gradepost.app.shelf;

import gradepost.text.Hole;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Five;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import gradepost.units.PrintedText;

/** What the bench refuses. Its sentences stand in {@code mistakes.properties}. */
final class ShelfText {
  private static final Mistakes MISTAKES = Mistakes.beside(ShelfText.class);
  private static final Hole<String> FIELD = Hole.word("field");
  private static final Hole<String> TYPED = PrintedText.quoted("typed");

  static final Two<String, String> CHOICE = MISTAKES.declare("choice", FIELD, TYPED);
  static final Five<String, String, String, String, String> NUMBER =
      MISTAKES.declare(
          "number", FIELD, TYPED, Hole.word("least"), Hole.word("most"), Hole.word("unit"));

  static final Three<String, String, Integer> VEHICLES =
      MISTAKES.declare("vehicles", FIELD, TYPED, Hole.count("cars"));

  private ShelfText() {}
}
