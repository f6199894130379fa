package gradepost.source;

/** What came of reading: a value, perhaps with warnings, or problems among which is an error. */
public sealed interface Reading<T> {

  Problems problems();

  /** It can be used. */
  record Good<T>(T value, Problems problems) implements Reading<T> {}

  /** It cannot. */
  record Rejected<T>(Problems problems) implements Reading<T> {}
}
