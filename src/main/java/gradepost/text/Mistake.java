package gradepost.text;

import java.util.Objects;

/**
 * What is wrong with what somebody typed, in whole sentences. Only a catalogue makes one, so that
 * no code can put one together.
 */
public final class Mistake {
  private final String key;
  private final String what;
  private final String allowed;
  private final String maybe;

  Mistake(String key, String what, String allowed, String maybe) {
    this.key = key;
    this.what = what;
    this.allowed = allowed;
    this.maybe = maybe;
  }

  /** Where its sentences stand in their catalogue. */
  public String key() {
    return key;
  }

  /** What was found, as a sentence without its full stop. */
  public String what() {
    return what;
  }

  /** What would be right, with its unit; empty text where {@link #what} says it. */
  public String allowed() {
    return allowed;
  }

  /** What may have been meant; empty text where nothing comes near. */
  public String maybe() {
    return maybe;
  }

  /** What was found and what would be right; on a line of its own, what may have been meant. */
  public String inWords() {
    return what
        + (allowed.isEmpty() ? "" : "; allowed: " + allowed)
        + (maybe.isEmpty() ? "" : "\n  Maybe " + maybe);
  }

  /** Equal are those that say the same. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Mistake m
        && what.equals(m.what)
        && allowed.equals(m.allowed)
        && maybe.equals(m.maybe);
  }

  @Override
  public int hashCode() {
    return Objects.hash(what, allowed, maybe);
  }

  @Override
  public String toString() {
    return what + "; allowed: " + allowed + "; maybe: " + maybe;
  }
}
