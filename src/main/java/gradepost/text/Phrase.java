package gradepost.text;

import java.util.Collection;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A text that is a part of others: "a list, each …". It is told of one thing.
 *
 * @param <T> what it is told of
 */
public final class Phrase<T> {
  private final Function<T, String> words;

  Phrase(Function<T, String> words) {
    this.words = words;
  }

  /** The phrase, told of a thing. */
  public String of(T thing) {
    return words.apply(thing);
  }

  /** A hole that this phrase fills for each of some things, with a separator between them. */
  public Hole<Collection<T>> list(String name, String separator) {
    return new Hole<>(
        name, things -> things.stream().map(words).collect(Collectors.joining(separator)));
  }

  /** A hole that this phrase fills. */
  public Hole<T> in(String name) {
    return new Hole<>(name, words);
  }
}
