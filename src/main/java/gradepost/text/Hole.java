package gradepost.text;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * A hole in a text, of one kind: whoever fills it hands in the thing itself, and the hole spells
 * it.
 *
 * @param name as it stands in the catalogue, {@code {name}}
 * @param spelling the one way in which a thing of this kind is written
 */
public record Hole<T>(String name, Function<? super T, String> spelling) {

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

  /** Its name, and the thing as it is written. */
  Map.Entry<String, String> filled(T thing) {
    return Map.entry(name, spelling.apply(thing));
  }
}
