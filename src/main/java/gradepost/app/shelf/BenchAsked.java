package gradepost.app.shelf;

import java.util.Map;
import java.util.Optional;

/**
 * What is typed at the bench, as it is typed; what is not typed is as planned.
 *
 * @param typed by the names of the fields: braking, later, speed, gauge, load, rail, gives,
 *     noticed, isolated; and of, the braking that the others were shown for
 */
public record BenchAsked(Map<String, String> typed) {
  /** Copies the map. */
  public BenchAsked {
    typed = Map.copyOf(typed);
  }

  Optional<String> of(String field) {
    return Optional.ofNullable(typed.get(field)).map(String::strip).filter(t -> !t.isEmpty());
  }
}
