package gradepost.app.making;

import gradepost.app.store.Answer;
import gradepost.reissue.register.Entry;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What became of one pack of a reissue.
 *
 * @param base the issue before, where it is not registered yet and has to be
 */
public record Outcome(Path file, State state, Answer told, Optional<Entry> base) {

  /** How far it came. */
  public enum State {
    /** It cannot be read. */
    UNREADABLE,
    /** The notice cannot be taken into it. */
    WRONG_NOTICE,
    /** Its files are not those of its last issue, and nobody has said that this is right. */
    STALE,
    /** The notice may be a mistake, and nobody has said that it is right. */
    DOUBTFUL,
    /** Nothing in the notice is for its route. */
    ELSEWHERE,
    /** Nothing on its papers changes. */
    UNTOUCHED,
    /** An issue has the notice already. */
    KNOWN,
    /** It is touched, and has to be worked out. */
    TOUCHED,
    /** It is touched, and cannot be issued. */
    FAILED,
    /** Workers are asked to make it. */
    ASKED,
    /** A new issue is registered, or would be. */
    ISSUED,
    /** The run ended before its turn. */
    LEFT
  }

  /** Of a pack whose last issue is registered, or need not be. */
  public static Outcome of(Path file, State state, Answer told) {
    return new Outcome(file, state, told, Optional.empty());
  }
}
