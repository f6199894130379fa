package gradepost.route.audit;

import gradepost.text.Mistake;

/**
 * Something that a competent person should look at.
 *
 * @param mistake what was found, what would be right with its unit, and what may have been meant;
 *     what was found is unique among the findings of a rule, since it is by these words that a
 *     finding is accepted
 * @param element the very record that it concerns, as the reader made it
 * @param key the key of that record; empty text where the whole record is meant
 */
public record AuditFinding(Mistake mistake, Object element, String key) {

  /**
   * With sentences of a rule.
   *
   * @throws IllegalArgumentException when they are of another catalogue
   */
  public AuditFinding {
    AuditRule.of(mistake);
  }

  /** What was found, as a sentence without its full stop. */
  public String what() {
    return mistake.what();
  }

  /** The rule that found it. */
  public AuditRule rule() {
    return AuditRule.of(mistake);
  }
}
