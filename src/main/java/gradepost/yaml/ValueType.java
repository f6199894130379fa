package gradepost.yaml;

import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;

/**
 * What may stand behind a key. The kinds are few and are all data, so that whoever writes a schema
 * or a page of documentation can walk over them.
 */
public sealed interface ValueType<T>
    permits Scalar, ListOf, ListOr, ObjectSchema, Variants, Forms, WordOr, WordMap, OwnKind {

  /**
   * The value of a node; empty when something was wrong, which has then been reported.
   *
   * @param label what the value is called in a message, usually its key
   */
  Optional<T> read(Node node, String label, Reader in);

  /** Whether a value is a single text, so that one may have been meant for a list of them. */
  default boolean isOneText() {
    return false;
  }

  /** What may stand here, in words. */
  String allowed();
}
