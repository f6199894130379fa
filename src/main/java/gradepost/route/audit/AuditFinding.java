package gradepost.route.audit;

import java.util.Map;

/**
 * Something that a competent person should look at.
 *
 * @param text the rule that found it, and in which way
 * @param element the very record that it concerns, as the reader made it
 * @param key the key of that record; empty text where the whole record is meant
 * @param values what stands in the holes of its sentences, each as it is to be read
 */
public record AuditFinding(AuditText text, Object element, String key, Map<String, String> values) {

  /**
   * Copies the values.
   *
   * @throws IllegalArgumentException when a hole has no value, or a value has no hole
   */
  public AuditFinding {
    values = Map.copyOf(values);
    if (!text.holes().equals(values.keySet())) {
      throw new IllegalArgumentException(
          "%s wants %s and is given %s".formatted(text.key(), text.holes(), values.keySet()));
    }
  }

  /** The rule that found it. */
  public AuditRule rule() {
    return text.rule();
  }

  /**
   * What was found, as a sentence without its full stop; unique among the findings of a rule, since
   * it is by these words that a finding is accepted.
   */
  public String what() {
    return text.what(values);
  }

  /** What would be right, with its unit. */
  public String bound() {
    return text.bound(values);
  }

  /** What may have been meant; empty text where nothing comes near. */
  public String maybe() {
    return text.maybe(values);
  }
}
