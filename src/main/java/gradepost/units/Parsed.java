package gradepost.units;

import java.util.Optional;
import java.util.function.Function;

/** What came of reading a text: the value, or what is wrong in words for whoever typed it. */
public sealed interface Parsed<T> {

  /** One answer for each case. */
  <R> R match(Function<Ok<T>, R> ok, Function<Bad<T>, R> bad);

  /** What was understood, if it was. */
  default Optional<Ok<T>> ok() {
    return match(Optional::of, bad -> Optional.empty());
  }

  /** Whether it was understood. */
  default boolean isOk() {
    return ok().isPresent();
  }

  /** It was understood. */
  record Ok<T>(T value, Convention convention) implements Parsed<T> {
    public Ok(T value) {
      this(value, Convention.NEUTRAL);
    }

    @Override
    public <R> R match(Function<Ok<T>, R> ok, Function<Bad<T>, R> bad) {
      return ok.apply(this);
    }
  }

  /**
   * It was not.
   *
   * @param what what was found, as a clause ("\"40\" has no unit")
   * @param allowed what would be right ("a speed, such as 40 mph or 64 km/h")
   * @param maybe what may have been meant; empty text where nothing comes near
   */
  record Bad<T>(String what, String allowed, String maybe) implements Parsed<T> {
    @Override
    public <R> R match(Function<Ok<T>, R> ok, Function<Bad<T>, R> bad) {
      return bad.apply(this);
    }
  }

  /** Which world of units a text was written in. */
  enum Convention {
    MILES,
    METRIC,
    /** The same in both, such as seconds. */
    NEUTRAL
  }
}
