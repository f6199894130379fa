package gradepost.yaml;

import gradepost.text.Allowed;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;

/**
 * What may stand behind a key. The kinds are few and are all data, so that whoever writes a schema
 * or a page of documentation can walk over them.
 */
public sealed interface ValueType<T> extends Allowed
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

  /** Whether it is a group of keys, which are described one by one. */
  default boolean isGroup() {
    return false;
  }

  /** One answer for each kind. */
  interface Cases<R> {
    /** A single text. */
    R text(Scalar<?> kind);

    /** A list. */
    R list(ListOf<?> kind);

    /** A list, or a group that stands for one. */
    R listOr(ListOr<?> kind);

    /** A group of keys. */
    R group(ObjectSchema<?> kind);

    /** A group of which one key says which. */
    R variants(Variants<?> kind);

    /** One of several forms. */
    R forms(Forms<?> kind);

    /** A word, or something else. */
    R wordOr(WordOr<?> kind);

    /** A group whose keys are names. */
    R wordMap(WordMap kind);

    /** What only some tables know. */
    R own(OwnKind<?> kind);
  }

  /** The answer for this kind. */
  <R> R match(Cases<R> cases);
}
