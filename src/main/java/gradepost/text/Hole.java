package gradepost.text;

import java.util.Collection;
import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * A hole in a text, of one kind: whoever fills it hands in the thing itself, and the hole spells
 * it. One thing may fill several holes, each with a part of it.
 *
 * @param <T> what fills it
 */
public final class Hole<T> {
  private final Map<String, Function<? super T, String>> spellings;

  private Hole(Map<String, Function<? super T, String>> spellings) {
    this.spellings = Collections.unmodifiableMap(spellings);
  }

  /**
   * One hole.
   *
   * @param name as it stands in the catalogue, {@code {name}}
   * @param spelling the one way in which a thing of this kind is written
   */
  public Hole(String name, Function<? super T, String> spelling) {
    this(new TreeMap<>(Map.of(name, spelling)));
  }

  /** A hole for a name or a word, which is written as it is. */
  public static Hole<String> word(String name) {
    return new Hole<>(name, word -> word);
  }

  /** A hole for a number of things. */
  public static Hole<Integer> count(String name) {
    return new Hole<>(name, count -> Integer.toString(count));
  }

  /** A hole for some names, with commas between them. */
  public static Hole<Collection<String>> list(String name) {
    return list(name, ", ");
  }

  /** A hole for some names, with a separator of its own between them. */
  public static Hole<Collection<String>> list(String name, String separator) {
    return new Hole<>(name, words -> String.join(separator, words));
  }

  /** A hole for a word that comes near, if there is one; it stays empty where there is none. */
  public static Hole<Optional<String>> perhaps(String name) {
    return new Hole<>(name, word -> word.orElse(""));
  }

  /** A hole for what may stand at a place. */
  public static Hole<Allowed> allowed(String name) {
    return new Hole<>(name, Allowed::allowed);
  }

  /** A hole that another text fills: what is wrong with a part of the whole. */
  public static Hole<Mistake> mistake(String name) {
    return new Hole<>(name, Mistake::what);
  }

  /** The same hole, filled by something of which only a part is spelt. */
  public <S> Hole<S> of(Function<? super S, ? extends T> part) {
    Map<String, Function<? super S, String>> ofPart = new TreeMap<>();
    spellings.forEach(
        (name, spelling) -> ofPart.put(name, whole -> spelling.apply(part.apply(whole))));
    return new Hole<>(ofPart);
  }

  /**
   * This hole and another, both filled by one thing.
   *
   * @throws TextFault when both have a name in common
   */
  public Hole<T> and(Hole<? super T> other) {
    Map<String, Function<? super T, String>> both = new TreeMap<>(spellings);
    other.spellings.forEach(
        (name, spelling) -> {
          if (both.put(name, spelling) != null) {
            throw new TextFault("{" + name + "} is filled twice");
          }
        });
    return new Hole<>(both);
  }

  /** The names of the holes. */
  Set<String> names() {
    return spellings.keySet();
  }

  /** What stands in each, by its name. */
  Map<String, String> filled(T thing) {
    Map<String, String> words = new TreeMap<>();
    spellings.forEach((name, spelling) -> words.put(name, spelling.apply(thing)));
    return words;
  }
}
