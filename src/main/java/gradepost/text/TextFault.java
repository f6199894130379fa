package gradepost.text;

/** A text that is not in its catalogue, or a hole that nothing fills: a mistake in the program. */
public final class TextFault extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  TextFault(String what) {
    super(what);
  }
}
