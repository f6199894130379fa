package gradepost.yaml;

import gradepost.text.Mistake;

/**
 * Something that whoever typed a file has to look at.
 *
 * @param what what was found, as a sentence without its full stop
 * @param allowed what would be right; empty text where {@code what} says it
 * @param maybe what may have been meant; empty text where nothing comes near
 * @param rule code of the rule of the audit that found it; empty text where the file itself is at
 *     fault, which nobody can accept
 */
public record Problem(
    SourcePosition spot,
    Severity severity,
    String what,
    String allowed,
    String maybe,
    String rule) {

  public Problem(
      SourcePosition spot, Severity severity, String what, String allowed, String maybe) {
    this(spot, severity, what, allowed, maybe, "");
  }

  /** One of a catalogue. */
  public static Problem of(SourcePosition spot, Severity severity, Mistake mistake) {
    return new Problem(spot, severity, mistake.what(), mistake.allowed(), mistake.maybe());
  }

  /** The same at another place. */
  public Problem at(SourcePosition other) {
    return new Problem(other, severity, what, allowed, maybe, rule);
  }

  /** Whether it is the same fault, perhaps with another "Maybe": less or more was known. */
  boolean saysTheSameAs(Problem other) {
    return spot.equals(other.spot) && what.equals(other.what) && severity == other.severity;
  }

  /** One for which the file is refused. */
  public static Problem error(SourcePosition spot, String what, String allowed, String maybe) {
    return new Problem(spot, Severity.ERROR, what, allowed, maybe);
  }

  /**
   * One or two lines: {@code file:line:column: warning: what; allowed: … [rule]}, then {@code Maybe
   * …}.
   */
  public String text() {
    return "%s:%s:%s: %s: %s"
            .formatted(spot.file(), spot.line(), spot.column(), severity.word(), what)
        + (allowed.isEmpty() ? "" : "; allowed: " + allowed)
        + (rule.isEmpty() ? "" : " [" + rule + "]")
        + (maybe.isEmpty() ? "" : "\n  Maybe " + maybe);
  }
}
