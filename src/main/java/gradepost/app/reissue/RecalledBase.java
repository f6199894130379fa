package gradepost.app.reissue;

import gradepost.app.store.Answer;
import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a clerk is told where the last issue was recalled: what it took in is still in the files.
 */
final class RecalledBase {
  private final Optional<Register> register;
  private final LastIssues last;
  private final LocalDateTime when;

  RecalledBase(Optional<Register> register, LastIssues last, LocalDateTime when) {
    this.register = register;
    this.last = last;
    this.when = when;
  }

  /**
   * Nothing where the last issue is not recalled.
   *
   * @param base the last issue as it was registered
   * @param next as it is to be issued
   * @param latest empty where none is registered
   */
  Answer told(Path file, PackFile base, PackFile next, Optional<Entry> latest)
      throws IOException, RegisterException {
    return register.isPresent() && latest.isPresent()
        ? told(register.get(), file, base, next, latest.get())
        : Answer.GOOD;
  }

  private Answer told(Register register, Path file, PackFile base, PackFile next, Entry latest)
      throws IOException, RegisterException {
    Optional<String> reason;
    Optional<Entry> before = Optional.empty();
    synchronized (register) {
      reason = register.recalled(latest, when);
      if (reason.isPresent() && latest.base().isPresent()) {
        before = register.issue(latest.pack(), latest.base().get());
      }
    }
    if (reason.isEmpty()) {
      return Answer.GOOD;
    }
    List<TemporaryRestriction> earlier =
        before.isEmpty()
            ? List.of()
            : last.base(file, base, before, new ArrayList<>())
                .map(PackFile::notices)
                .orElse(List.of());
    List<String> held =
        base.notices().stream()
            .filter(r -> r.status() != Status.WITHDRAWN && !earlier.contains(r))
            .filter(r -> next.notices().contains(r))
            .map(TemporaryRestriction::reference)
            .toList();
    String holds =
        held.isEmpty()
            ? "none of the restrictions that %s took in is left as it was".formatted(latest.name())
            : "it still holds what %s took in: %s; if that was wrong, withdraw it with a notice"
                .formatted(latest.name(), String.join(", ", held));
    return Answer.said(
        "%s: warning: the new issue is built on %s, which was recalled (%s); %s"
            .formatted(latest.pack(), latest.name(), reason.get(), holds));
  }
}
