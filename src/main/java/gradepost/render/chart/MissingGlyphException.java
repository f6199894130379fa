package gradepost.render.chart;

/** A text holds a character that the embedded font does not have. */
public final class MissingGlyphException extends TemplateFault {
  private static final long serialVersionUID = 1L;
  private final int codePoint;

  MissingGlyphException(int codePoint, String text) {
    super(
        "the font has no glyph for %s (U+%04X) in \"%s\""
            .formatted(Character.toString(codePoint), codePoint, text));
    this.codePoint = codePoint;
  }

  /** The character that the font lacks. */
  public int codePoint() {
    return codePoint;
  }
}
