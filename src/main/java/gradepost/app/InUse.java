package gradepost.app;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.text.Mistake;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** Whether an issue is fit to be put into somebody's hands, or to be signed for. */
final class InUse {
  private final Register register;
  private final LocalDateTime now;
  private final boolean confirmed;

  /**
   * @param confirmed whether the clerk knows what is unusual, so that nothing is refused
   */
  InUse(Register register, LocalDateTime now, boolean confirmed) {
    this.register = register;
    this.now = now;
    this.confirmed = confirmed;
  }

  /**
   * Requires that an issue is in use, or will be, and that nobody gets a second copy of it.
   *
   * @throws RegisterException if it was recalled or superseded, or has expired, or if the holder
   *     has a copy of it
   */
  void toHandOut(Entry issue, String holder) throws RegisterException {
    if (confirmed) {
      return;
    }
    Optional<String> recalled = register.recalled(issue, now);
    if (recalled.isPresent()) {
      Optional<String> instead = instead(issue);
      throw new RegisterException(
          Register.isSuperseded(recalled.get())
              ? AppText.NOT_IN_USE.with(issue.name(), recalled.get(), instead)
              : AppText.CALLED_BACK.with(issue.name(), recalled.get(), instead));
    }
    require(issue, AppText.ISSUE_EXPIRED.with(issue.name(), issue.validTo()));
    List<String> copies = register.held(issue, holder);
    if (!copies.isEmpty()) {
      throw new RegisterException(AppText.HAS_COPY.with(holder, issue.name(), copies));
    }
  }

  /**
   * Requires that an issue may still be signed off on. One that is superseded may: the ride may
   * have been before, and whoever is signed off on it is briefed on the later one.
   *
   * @throws RegisterException if it was called back, or has expired
   */
  void toSignOff(Entry issue) throws RegisterException {
    if (confirmed) {
      return;
    }
    Optional<String> recalled =
        register.recalled(issue, now).filter(reason -> !Register.isSuperseded(reason));
    if (recalled.isPresent()) {
      throw new RegisterException(
          AppText.SIGNED_CALLED_BACK.with(issue.name(), recalled.get(), instead(issue)));
    }
    require(issue, AppText.SIGNED_EXPIRED.with(issue.name(), issue.validTo()));
  }

  private void require(Entry issue, Mistake expired) throws RegisterException {
    if (!issue.validTo().isAfter(now)) {
      throw new RegisterException(expired);
    }
  }

  /** A later issue of the pack that is not recalled. */
  private Optional<String> instead(Entry issue) throws RegisterException {
    Optional<Entry> later =
        register.latest(issue.pack()).filter(last -> last.number() > issue.number());
    boolean good = later.isPresent() && register.recalled(later.get(), now).isEmpty();
    return later.filter(last -> good).map(Entry::name);
  }
}
