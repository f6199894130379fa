package gradepost.yaml;

import java.util.Optional;

/**
 * One row of a key table.
 *
 * @param description what it is for, in a sentence or two; it is the documentation of the key
 * @param fallback the value that stands when the key is left out; empty where none does
 * @param fallbackText that value as it would be typed
 */
public record Key<T>(
    String name,
    ValueType<T> kind,
    boolean required,
    Optional<T> fallback,
    String fallbackText,
    String description) {

  /** A key that must be there. */
  public static <T> Key<T> required(String name, ValueType<T> kind, String description) {
    return new Key<>(name, kind, true, Optional.empty(), "", description);
  }

  /** May be left out; the value is asked for with {@link Values#find}. */
  public static <T> Key<T> optional(String name, ValueType<T> kind, String description) {
    return new Key<>(name, kind, false, Optional.empty(), "", description);
  }

  /** May be left out, and then {@code fallback} stands. */
  public static <T> Key<T> preset(
      String name, ValueType<T> kind, T fallback, String fallbackText, String description) {
    return new Key<>(name, kind, false, Optional.of(fallback), fallbackText, description);
  }
}
