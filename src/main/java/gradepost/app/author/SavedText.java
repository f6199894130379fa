package gradepost.app.author;

import java.time.LocalDateTime;

/**
 * A text that once lay in a file.
 *
 * @param when it was put there, or found there
 * @param digest of the text
 * @param how it came there
 * @param by who put it there; empty text where nobody said
 */
public record SavedText(LocalDateTime when, String digest, How how, String by) {

  /** How a text came into its file. */
  public enum How {
    /** It lay there when somebody else's was saved: nobody knows who wrote it, or when. */
    FOUND,
    SAVED,
    /** It was an earlier one. */
    TAKEN_BACK
  }
}
