package gradepost.app;

import gradepost.reissue.register.Entry;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What became of one pack of a reissue.
 *
 * @param base the issue before, where it is not registered yet and has to be
 * @param entry the new issue, its files in the archive
 * @param known the issue that took the notice in already
 */
record Outcome(
    Path file,
    State state,
    Answer told,
    Optional<Entry> base,
    Optional<Entry> entry,
    Optional<Entry> known) {

  /** How far it came. */
  enum State {
    /** It cannot be read. */
    UNREADABLE,
    /** Nothing in the notice is for its route. */
    ELSEWHERE,
    /** Nothing on its papers changes. */
    UNTOUCHED,
    /** An issue has the notice already. */
    KNOWN,
    /** It is touched, and cannot be issued. */
    FAILED,
    /** A new issue is ready, or would be. */
    READY
  }

  static Outcome of(Path file, State state, Answer told) {
    return new Outcome(file, state, told, Optional.empty(), Optional.empty(), Optional.empty());
  }
}
