package gradepost.app.issue;

import gradepost.app.Changes;
import gradepost.app.store.Unplanned;
import gradepost.briefing.Messages;
import java.nio.file.Path;
import java.util.Optional;

/** The first issue of the frozen pack: two directions with two formations each, planned once. */
final class FrozenIssue {
  static final Path FILE = Path.of("pack-thrumble.yaml");

  private static Optional<Differences> first = Optional.empty();

  static Differences first() throws Unplanned {
    if (first.isEmpty()) {
      first =
          Optional.of(
              new DifferenceFinder(Messages.english())
                  .of(FILE, Changes.valley(), Optional.empty()));
    }
    return first.orElseThrow();
  }

  private FrozenIssue() {}
}
