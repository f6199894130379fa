package gradepost.app.store;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** A paper held against those that the register knows. */
public final class RegisteredPaper {
  private final Store store;
  private final Path paper;
  private final LocalDateTime now;

  /**
   * @param now when its issue is to be in force
   */
  public RegisteredPaper(Store store, Path paper, LocalDateTime now) {
    this.store = store;
    this.paper = paper;
    this.now = now;
  }

  /** What the register says of a file with exactly this content, if it has one. */
  public Optional<Answer> with(byte[] bytes) throws RegisterException {
    try (Register register = store.open()) {
      List<List<String>> found = register.list(Question.paper(Digest.of(bytes))).rows();
      if (found.isEmpty()) {
        return Optional.empty();
      }
      List<String> row = found.get(0);
      Answer genuine =
          Answer.said(
              StoreText.GENUINE.of(
                  new StoreText.Genuine(
                      paper, row.get(1), row.get(0), row.get(3).replace('T', ' '))));
      if (row.get(2).equals("draft")) {
        return Optional.of(
            genuine.and(
                Answer.refused(StoreText.error(paper, StoreText.FORMER_DRAFT.with(row.get(0))))));
      }
      Optional<Entry> issue = register.find(row.get(0));
      return Optional.of(
          issue.isEmpty() ? genuine : genuine.and(inForce(register, issue.get(), row.get(4))));
    }
  }

  /**
   * @param over why the issue is not in force any more, or will not be
   */
  private Answer inForce(Register register, Entry issue, String over) throws RegisterException {
    Optional<String> recalled = register.recalled(issue, now);
    if (recalled.isPresent()) {
      return Answer.refused(
          StoreText.error(
              paper,
              Register.isSuperseded(recalled.get())
                  ? StoreText.SUPERSEDED.with(issue.name(), recalled.get())
                  : StoreText.RECALLED.with(issue.name(), recalled.get())));
    }
    if (!issue.validTo().isAfter(now)) {
      return Answer.refused(
          StoreText.error(paper, StoreText.EXPIRED.with(issue.name(), issue.validTo())));
    }
    if (issue.validFrom().isAfter(now)) {
      return Answer.said(StoreText.BEGINS.of(issue));
    }
    return over.isEmpty()
        ? Answer.GOOD
        : Answer.said(StoreText.STILL_IN_FORCE.of(new StoreText.Until(issue.name(), over)));
  }

  /** A paper that says which issue it is, and is none of that issue's papers. */
  public Optional<Answer> changed(String printed) throws RegisterException {
    try (Register register = store.open()) {
      return register
          .find(printed)
          .filter(entry -> !entry.papers().isEmpty())
          .map(entry -> Answer.refused(StoreText.error(paper, StoreText.CHANGED.with(entry))));
    }
  }
}
