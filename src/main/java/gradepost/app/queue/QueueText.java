package gradepost.app.queue;

import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.One;
import gradepost.text.Mistakes.Two;

/** What the queue refuses. Its sentences stand in {@code mistakes.properties}. */
final class QueueText {
  private static final Mistakes MISTAKES = Mistakes.beside(QueueText.class);
  private static final Hole<Integer> TIMES = Hole.count("times");

  static final One<Integer> STILL = MISTAKES.declare("still", Hole.count("count"));
  static final Mistake STOPPED = MISTAKES.declare("stopped");
  static final Mistake NO_POSTGRES = MISTAKES.declare("no-postgres");
  static final Two<String, Integer> NO_MEMORY =
      MISTAKES.declare("no-memory", Hole.word("issue"), TIMES);
  static final Two<String, Integer> GIVEN_UP =
      MISTAKES.declare("given-up", Hole.word("issue"), TIMES);
  static final Two<String, String> FAULT =
      MISTAKES.declare("fault", Hole.word("issue"), Hole.word("fault"));
  static final One<String> INPUTS_LOST = MISTAKES.declare("inputs-lost", Hole.word("issue"));
  static final One<String> LATE = MISTAKES.declare("late", Hole.word("issue"));

  private QueueText() {}
}
