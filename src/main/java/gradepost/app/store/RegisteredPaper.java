package gradepost.app.store;

import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A paper held against those that the register knows. */
public final class RegisteredPaper {
  private final Store store;
  private final Path paper;

  public RegisteredPaper(Store store, Path paper) {
    this.store = store;
    this.paper = paper;
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
      if (!row.get(4).isEmpty()) {
        return Optional.of(
            genuine.and(
                Answer.refused(
                    StoreText.error(paper, StoreText.RECALLED.with(row.get(0), row.get(4))))));
      }
      return Optional.of(genuine);
    }
  }

  /** A paper that says which issue it is, and is none of that papers. */
  public Optional<Answer> changed(String printed) throws RegisterException {
    try (Register register = store.open()) {
      return register
          .find(printed)
          .filter(entry -> !entry.papers().isEmpty())
          .map(entry -> Answer.refused(StoreText.error(paper, StoreText.CHANGED.with(entry))));
    }
  }
}
