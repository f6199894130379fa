package gradepost.app;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.text.Mistake;
import java.time.LocalDateTime;
import java.util.Optional;

/** Whether an issue is fit to be put into somebody's hands. */
final class InUse {

  /**
   * Requires that an issue is in use, or will be.
   *
   * @throws RegisterException if it was recalled or superseded, or has expired
   */
  static void require(Register register, Entry issue, LocalDateTime now) throws RegisterException {
    Optional<Mistake> obstacle = obstacle(register, issue, now);
    if (obstacle.isPresent()) {
      throw new RegisterException(obstacle.get());
    }
  }

  private static Optional<Mistake> obstacle(Register register, Entry issue, LocalDateTime now)
      throws RegisterException {
    Optional<String> recalled = register.recalled(issue, now);
    if (recalled.isPresent()) {
      Optional<Entry> later =
          register.latest(issue.pack()).filter(last -> last.number() > issue.number());
      boolean good = later.isPresent() && register.recalled(later.get(), now).isEmpty();
      Optional<String> instead = later.filter(last -> good).map(Entry::name);
      return Optional.of(
          Register.isSuperseded(recalled.get())
              ? AppText.NOT_IN_USE.with(issue.name(), recalled.get(), instead)
              : AppText.CALLED_BACK.with(issue.name(), recalled.get(), instead));
    }
    return issue.validTo().isAfter(now)
        ? Optional.empty()
        : Optional.of(AppText.ISSUE_EXPIRED.with(issue.name(), issue.validTo()));
  }

  private InUse() {}
}
