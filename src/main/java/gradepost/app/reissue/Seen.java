package gradepost.app.reissue;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.ArchivedInputs.Because;
import gradepost.app.issue.LastIssue;
import gradepost.app.making.Due;
import gradepost.app.making.Outcome;
import gradepost.app.making.Outcome.State;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Entry;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.util.List;
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

    /** What is told of it before it is worked out. */
    Answer told() {
      return outcome.told().and(next.said());
    }

    /**
     * The issue that is to be made of it.
     *
     * @param urgent whether an emergency addendum belongs to it
     */
    Due due(boolean urgent) {
      return new Due(
          outcome.file(),
          next.pack(),
          new LastIssue(before, latest.map(Entry::sheets).orElse(List.of())),
          new Because(
              Optional.of(next.pack().issue().number() - 1),
              digest,
              urgent,
              ArchivedInputs.named(found.inputs())),
          told());
    }
  }

  static Seen done(Path file, State state, Answer told) {
    return new Done(Outcome.of(file, state, told));
  }
}
