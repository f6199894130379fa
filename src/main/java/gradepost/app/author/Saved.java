package gradepost.app.author;

import java.util.Optional;

/**
 * What came of saving.
 *
 * @param now what the file says now
 * @param checked what was found in the text; empty where nobody looked
 */
public record Saved(State state, OpenText now, Optional<Checked> checked) {

  /** What came of it. */
  public enum State {
    /** The text is in its file, and whoever said so may be killed. */
    SAVED,
    /** The file says that already. */
    SAME,
    /** Somebody else saved another text meanwhile; nothing was written. */
    CHANGED_MEANWHILE,
    /** Packs could not be briefed with it, and nobody said that it may be saved; nor was it. */
    FAULTY
  }
}
