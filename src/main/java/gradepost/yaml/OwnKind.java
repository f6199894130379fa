package gradepost.yaml;

import java.util.List;
import java.util.Optional;

/**
 * A kind of value that only some tables know; whoever brings it says how it is read, and has to say
 * how its schema looks.
 */
public non-sealed interface OwnKind<T> extends ValueType<T> {

  /** The name of the definition by which schemas refer to it; empty where each spells it out. */
  Optional<String> definition();

  /** How it may be written, for a schema. */
  List<ValueType<?>> written();

  @Override
  default <R> R match(Cases<R> cases) {
    return cases.own(this);
  }
}
