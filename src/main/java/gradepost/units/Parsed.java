package gradepost.units;

import gradepost.text.Allowed;
import gradepost.text.Mistake;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What came of reading a text: the value, or what is wrong with the text. */
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

  /** What is wrong with a text; whoever knows where the text stands has it told. */
  interface Fault {
    /**
     * The mistake in words.
     *
     * @param key what the text stands behind
     * @param allowed what may stand there
     * @param meant what may have been meant
     */
    Mistake told(String key, Allowed allowed, Collection<String> meant);
  }

  /**
   * It was not.
   *
   * @param fault what is wrong with it
   * @param meant every text that may have been meant; empty where none comes near
   */
  record Bad<T>(Fault fault, List<String> meant) implements Parsed<T> {
    public Bad {
      meant = List.copyOf(meant);
    }

    /** With a text that may have been meant, if there is one. */
    public Bad(Fault fault, Optional<String> meant) {
      this(fault, meant.stream().toList());
    }

    /** The mistake in words, with all that may have been meant. */
    public Mistake told(String key, Allowed allowed) {
      return fault.told(key, allowed, meant);
    }

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
