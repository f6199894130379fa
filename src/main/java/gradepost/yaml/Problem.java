package gradepost.yaml;

import gradepost.text.Mistake;

/**
 * Something that whoever typed a file has to look at.
 *
 * @param mistake what was found, what would be right and what may have been meant: sentences of a
 *     catalogue, as no code can put them together
 * @param rule code of the rule of the audit that found it; empty text where the file itself is at
 *     fault, which nobody can accept
 */
public record Problem(SourcePosition spot, Severity severity, Mistake mistake, String rule) {

  /** One with which a file itself is at fault. */
  public Problem(SourcePosition spot, Severity severity, Mistake mistake) {
    this(spot, severity, mistake, "");
  }

  /** One for which the file is refused. */
  public static Problem error(SourcePosition spot, Mistake mistake) {
    return new Problem(spot, Severity.ERROR, mistake);
  }

  /** What was found, as a sentence without its full stop. */
  public String what() {
    return mistake.what();
  }

  /** What would be right; empty text where {@link #what} says it. */
  public String allowed() {
    return mistake.allowed();
  }

  /** What may have been meant; empty text where nothing comes near. */
  public String maybe() {
    return mistake.maybe();
  }

  /** The same at another place. */
  public Problem at(SourcePosition other) {
    return new Problem(other, severity, mistake, rule);
  }

  /** A fault without its "Maybe", which differs when less or more was known. */
  record Said(SourcePosition spot, Severity severity, String what) {}

  /** What two tellings of the same fault have in common. */
  Said said() {
    return new Said(spot, severity, what());
  }

  /**
   * One or two lines: {@code file:line:column: warning: what; allowed: … [rule]}, then {@code Maybe
   * …}.
   */
  public String text() {
    return "%s:%s:%s: %s: %s"
            .formatted(spot.file(), spot.line(), spot.column(), severity.word(), what())
        + (allowed().isEmpty() ? "" : "; allowed: " + allowed())
        + (rule.isEmpty() ? "" : " [" + rule + "]")
        + (maybe().isEmpty() ? "" : "\n  Maybe " + maybe());
  }
}
