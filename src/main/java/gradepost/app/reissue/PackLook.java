package gradepost.app.reissue;

import gradepost.app.issue.OtherLine;
import gradepost.app.issue.PaperPair;
import gradepost.app.making.Outcome;
import gradepost.app.making.Outcome.State;
import gradepost.app.reissue.NextIssue.Amended;
import gradepost.app.reissue.NextIssue.Next;
import gradepost.app.store.Answer;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.pack.NoticeFile;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Looks at one pack: whether a notice, or an edit by hand, can touch it. It plans nothing. A pack
 * is read as its files are and as it is to be issued; its last issue too, where the files differ.
 */
final class PackLook {
  private final Order order;
  private final Sources sources;
  private final Optional<NoticeFile> notice;
  private final Optional<Register> register;
  private final LastIssues last;
  private final NextIssue next;
  private final NothingToDo done;
  private final RecalledBase recalled;

  /**
   * @param notice empty where the files in place have been edited by hand
   * @param register empty where there is none yet
   * @param when the hour of the run
   */
  PackLook(
      Order order,
      Sources sources,
      Optional<NoticeFile> notice,
      Optional<Register> register,
      LastIssues last,
      LocalDateTime when) {
    this.order = order;
    this.sources = sources;
    this.notice = notice;
    this.register = register;
    this.last = last;
    this.done = new NothingToDo(order, when);
    this.recalled = new RecalledBase(register, last, when);
    this.next = new NextIssue(sources, order.tell(), when);
  }

  Seen at(Path file, PackIndex index) throws IOException, RegisterException {
    Reading<PackFile> reading = last.toLookAt(file, sources);
    if (reading.found().isEmpty()) {
      return Seen.done(file, State.UNREADABLE, Answer.of(reading.problems()));
    }
    PackFile found = reading.found().get();
    index.note(found);
    if (notice.isEmpty()) {
      return looked(file, found, List.of(), Answer.GOOD);
    }
    var read = notice.get().read(found);
    if (read.found().isEmpty()) {
      return Seen.done(file, State.WRONG_NOTICE, Answer.of(read.problems()));
    }
    List<TemporaryRestriction> notices = read.found().get();
    return notices.isEmpty()
        ? Seen.done(file, State.ELSEWHERE, Answer.said(LookTold.elsewhere(found.id())))
        : looked(file, found, notices, LookTold.noted(read.problems()));
  }

  private Seen looked(Path file, PackFile found, List<TemporaryRestriction> notices, Answer noted)
      throws IOException, RegisterException {
    String digest = Registered.digest(found, notices);
    Registered there = Registered.of(register, found.id(), digest);
    if (there.waits()) {
      // Only a look by itself comes here: a run has put it in place.
      String waits = LookTold.waits(there.latest().orElseThrow());
      return Seen.done(file, State.KNOWN, Answer.said(waits));
    }
    if (there.hasNotice() && last.areInPlace(file, found)) {
      return done.has(file, there);
    }
    List<String> lacking = new ArrayList<>();
    Optional<PackFile> base = last.base(file, found, there.latest(), lacking);
    if (base.isEmpty()) {
      return Seen.done(file, State.UNREADABLE, new Answer(List.of(), List.of(), lacking, false));
    }
    Optional<String> other =
        there.latest().flatMap(l -> OtherLine.obstacle(file, found, l, base.get()));
    if (other.isPresent() && !order.read().edits().confirmed().contains(found.route().name())) {
      return Seen.done(file, State.STALE, noted.and(Answer.refused(other.get())));
    }
    Amended amended = Amended.of(file, found, notices);
    Optional<String> outside = LookTold.outside(file, found, amended.inputs());
    if (outside.isPresent()) {
      return Seen.done(file, State.FAILED, noted.and(Answer.refused(outside.get())));
    }
    Reading<Next> issue = next.of(amended, base.get(), there.latest());
    if (issue.found().isEmpty()) {
      return Seen.done(file, State.FAILED, Answer.of(issue.problems()));
    }
    Next to = issue.found().get();
    Answer files = last.compared(amended, to.pack(), there.latest(), base.get());
    if (!files.good()) {
      return Seen.done(file, State.STALE, files);
    }
    if (there.hasNotice()) {
      return done.has(file, there);
    }
    boolean asOf = order.tell().asOf().isPresent();
    if (asOf && to.obstacle().isPresent()) {
      return Seen.done(file, State.FAILED, noted.and(to.obstacle().get()));
    }
    PackFile asFound = asOf ? to.pack() : to.pack().with(found.issue(), to.pack().notices());
    if (!PaperPair.anyMayDiffer(base.get(), asFound)) {
      return done.untouched(amended, asFound, there, noted.and(files));
    }
    if (there.taken().isPresent()) {
      String old = LookTold.old(file, there.taken().get(), there.latest().orElseThrow());
      return Seen.done(file, State.FAILED, Answer.refused(old));
    }
    Optional<Entry> takenIn = last.takenIn(found, there.latest());
    Answer told = noted.and(files).and(recalled.told(file, base.get(), to.pack(), there.latest()));
    Outcome outcome = new Outcome(file, State.TOUCHED, told, takenIn);
    return new Seen.Touched(outcome, found, to, base.get(), digest, there.latest());
  }
}
