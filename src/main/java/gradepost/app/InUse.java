package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.text.Mistake;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Whether an issue is fit to be put into somebody's hands, or to be signed for. */
final class InUse {
  private final Register register;
  private final LocalDateTime now;

  /** What may be a mistake in an act: all of it, so that nothing is confirmed unseen. */
  interface Doubts {
    /** There is nothing to confirm, or it is confirmed. */
    Doubts NONE = (use, issue) -> List.of();

    /** The same, unless the clerk knows of it. */
    static Doubts unless(boolean confirmed, Doubts doubts) {
      return confirmed ? NONE : doubts;
    }

    /** What it is. */
    List<Mistake> of(InUse use, Entry issue) throws RegisterException;
  }

  InUse(Register register, LocalDateTime now) {
    this.register = register;
    this.now = now;
  }

  /**
   * What is unusual where somebody gets a copy of an issue: that it is recalled, superseded or
   * expired, that he has one already.
   */
  List<Mistake> toHandOut(Entry issue, String holder) throws RegisterException {
    List<Mistake> doubts = new ArrayList<>();
    Optional<String> recalled = register.recalled(issue, now);
    if (recalled.isPresent()) {
      Optional<String> instead = instead(issue);
      doubts.add(
          Register.isSuperseded(recalled.get())
              ? AppText.NOT_IN_USE.with(issue.name(), recalled.get(), instead)
              : AppText.CALLED_BACK.with(issue.name(), recalled.get(), instead));
    }
    if (expired(issue)) {
      doubts.add(AppText.ISSUE_EXPIRED.with(issue.name(), issue.validTo()));
    }
    List<String> copies = register.held(issue, holder);
    if (!copies.isEmpty()) {
      doubts.add(AppText.HAS_COPY.with(holder, issue.name(), copies));
    }
    return doubts;
  }

  /**
   * What is unusual where somebody is signed off on an issue: that it is recalled, superseded or
   * expired. The ride may have been before; but the driver is not competent on what changed since.
   */
  List<Mistake> toSignOff(Entry issue) throws RegisterException {
    List<Mistake> doubts = new ArrayList<>();
    Optional<String> recalled = register.recalled(issue, now);
    if (recalled.isPresent()) {
      Optional<String> instead = instead(issue);
      doubts.add(
          Register.isSuperseded(recalled.get())
              ? AppText.SIGNED_SUPERSEDED.with(issue.name(), recalled.get(), instead)
              : AppText.SIGNED_CALLED_BACK.with(issue.name(), recalled.get(), instead));
    }
    if (expired(issue)) {
      doubts.add(AppText.SIGNED_EXPIRED.with(issue.name(), issue.validTo()));
    }
    return doubts;
  }

  /** What is said of doubts that nobody has confirmed, a line each. */
  static Answer refused(List<Mistake> doubts) {
    return new Answer(
        List.of(), List.of(), doubts.stream().map(d -> "error: " + d.inWords()).toList(), false);
  }

  private boolean expired(Entry issue) {
    return !issue.validTo().isAfter(now);
  }

  /** A later issue of the pack that is not recalled. */
  private Optional<String> instead(Entry issue) throws RegisterException {
    Optional<Entry> later =
        register.latest(issue.pack()).filter(last -> last.number() > issue.number());
    boolean good = later.isPresent() && register.recalled(later.get(), now).isEmpty();
    return later.filter(last -> good).map(Entry::name);
  }
}
