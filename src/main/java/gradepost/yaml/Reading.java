package gradepost.yaml;

import java.util.Optional;

/** What came of reading: a value, perhaps with warnings, or problems among which is an error. */
public sealed interface Reading<T> {

  Problems problems();

  /** The value if there is one. */
  static <T> Reading<T> of(Optional<T> value, Problems problems) {
    return value
        .<Reading<T>>map(v -> new Good<>(v, problems))
        .orElseGet(() -> new Rejected<>(problems));
  }

  /** It can be used. */
  record Good<T>(T value, Problems problems) implements Reading<T> {}

  /** It cannot. */
  record Rejected<T>(Problems problems) implements Reading<T> {}
}
