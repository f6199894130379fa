package gradepost.yaml;

import java.util.Optional;
import java.util.function.Function;

/** What came of reading: a value, perhaps with warnings, or problems among which is an error. */
public sealed interface Reading<T> {

  /** What is wrong, or may be. */
  Problems problems();

  /** One answer for each case. */
  <R> R match(Function<Good<T>, R> good, Function<Rejected<T>, R> rejected);

  /** The value, where it can be used. */
  default Optional<T> found() {
    return match(good -> Optional.of(good.value()), rejected -> Optional.empty());
  }

  /** The value if there is one. */
  static <T> Reading<T> of(Optional<T> value, Problems problems) {
    return value
        .<Reading<T>>map(v -> new Good<>(v, problems))
        .orElseGet(() -> new Rejected<>(problems));
  }

  /** It can be used. */
  record Good<T>(T value, Problems problems) implements Reading<T> {
    @Override
    public <R> R match(Function<Good<T>, R> good, Function<Rejected<T>, R> rejected) {
      return good.apply(this);
    }
  }

  /** It cannot. */
  record Rejected<T>(Problems problems) implements Reading<T> {
    @Override
    public <R> R match(Function<Good<T>, R> good, Function<Rejected<T>, R> rejected) {
      return rejected.apply(this);
    }
  }
}
