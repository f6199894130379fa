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
              "%s: genuine, byte for byte %s of %s, issued %s"
                  .formatted(paper, row.get(1), row.get(0), row.get(3).replace('T', ' ')));
      if (row.get(2).equals("draft")) {
        return Optional.of(
            genuine.and(
                Answer.refused(
                    "%s: error: it is the DRAFT of %s, from before it was checked"
                        .formatted(paper, row.get(0)))));
      }
      if (!row.get(4).isEmpty()) {
        return Optional.of(
            genuine.and(
                Answer.refused(
                    "%s: error: %s is recalled: %s".formatted(paper, row.get(0), row.get(4)))));
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
          .map(
              entry ->
                  Answer.refused(
                      "%s: error: its fingerprint is that of %s, but it is none of the %d papers registered for it: it was changed, or made apart from them\n  Maybe use the registered paper: gradepost reproduce %s --out DIR"
                          .formatted(paper, entry.name(), entry.papers().size(), entry.name())));
    }
  }
}
