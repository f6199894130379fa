package gradepost.app.reissue;

import gradepost.app.making.Outcome.State;
import gradepost.app.reissue.NextIssue.Amended;
import gradepost.app.store.Answer;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.register.Entry;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;

/** What is said of a pack for which a run has nothing to do. */
final class NothingToDo {
  private final Order order;
  private final LocalDateTime when;

  NothingToDo(Order order, LocalDateTime when) {
    this.order = order;
    this.when = when;
  }

  /** It has the notice already. */
  Seen has(Path file, Registered there) {
    int taken = there.taken().orElseThrow();
    Entry latest = there.latest().orElseThrow();
    String said = LookTold.has(taken, latest, order.tell().emergency());
    return Seen.done(file, State.KNOWN, Answer.said(said));
  }

  /** Nothing of it changes. */
  Seen untouched(Amended amended, PackFile asFound, Registered there, Answer noted) {
    Path file = amended.file();
    List<TemporaryRestriction> timely = PackTrains.timely(asFound, amended.notices());
    return there.latest().isEmpty() && PackTrains.concerned(asFound, timely)
        ? Seen.done(file, State.FAILED, noted.and(Answer.refused(LookTold.uncertain(file))))
        : Seen.done(
            file,
            State.UNTOUCHED,
            noted
                .and(Answer.said(LookTold.untouched(asFound, amended.notices())))
                .and(LookTold.ended(asFound, when)));
  }
}
