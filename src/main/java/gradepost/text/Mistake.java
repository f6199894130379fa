package gradepost.text;

/**
 * What is wrong with what somebody typed, in whole sentences. Only a catalogue makes one, so that
 * no code can put one together.
 */
public final class Mistake {
  private final String what;
  private final String allowed;
  private final String maybe;

  Mistake(String what, String allowed, String maybe) {
    this.what = what;
    this.allowed = allowed;
    this.maybe = maybe;
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
}
