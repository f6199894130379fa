package gradepost.app.account;

import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Three;

/** Why a password is not taken. Its sentences stand in {@code mistakes.properties}. */
final class AccountText {
  private static final Mistakes MISTAKES = Mistakes.beside(AccountText.class);

  static final Three<Integer, Integer, Integer> LENGTH =
      MISTAKES.declare("length", Hole.count("count"), Hole.count("least"), Hole.count("most"));
  static final Mistake GUESSED = MISTAKES.declare("guessed");
  static final Mistake SAME = MISTAKES.declare("same");
  static final Mistake WRONG_OLD = MISTAKES.declare("wrong-old");
  static final Mistake TWICE = MISTAKES.declare("twice");

  private AccountText() {}
}
