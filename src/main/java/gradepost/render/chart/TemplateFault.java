package gradepost.render.chart;

import java.io.IOException;

/** A template cannot be read or filled; the message names the file, the line and the reason. */
public sealed class TemplateFault extends IOException permits MissingGlyphException {
  private static final long serialVersionUID = 1L;

  public TemplateFault(String message, Throwable cause) {
    super(message, cause);
  }

  public TemplateFault(String message) {
    super(message);
  }
}
