package gradepost.app.reissue;

import gradepost.app.reissue.Outcome.State;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Entry;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;

/** What was seen when a pack was looked at. */
sealed interface Seen {
  /** How far the pack came. */
  Outcome outcome();

  /** One answer for each case. */
  <T> T match(Function<Done, T> done, Function<Touched, T> touched);

  /** There is nothing more to do. */
  record Done(Outcome outcome) implements Seen {
    @Override
    public <T> T match(Function<Done, T> done, Function<Touched, T> touched) {
      return done.apply(this);
    }
  }

  /**
   * It has to be worked out.
   *
   * @param found as the files are
   * @param next as it is to be issued
   * @param before the issue that it is compared with
   * @param digest of the notice
   * @param latest issue registered
   */
  record Touched(
      Outcome outcome,
      PackFile found,
      NextIssue.Next next,
      PackFile before,
      String digest,
      Optional<Entry> latest)
      implements Seen {
    @Override
    public <T> T match(Function<Done, T> done, Function<Touched, T> touched) {
      return touched.apply(this);
    }
  }

  static Seen done(Path file, State state, Answer told) {
    return new Done(Outcome.of(file, state, told));
  }
}
