package gradepost.app.store;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Whether a register and an archive belong together. */
public final class SharedArchive {
  /** Who shares a register shares its archive: one that has nothing of its issues is another. */
  public static Optional<Answer> elsewhere(Store store, Register register)
      throws IOException, RegisterException {
    List<List<String>> issues = register.list(Question.issues()).rows();
    if (issues.isEmpty()) {
      return Optional.empty();
    }
    Archive archive = store.kept();
    for (List<String> row : issues) {
      for (Entry.Kept kept : register.find(row.get(0)).orElseThrow().inputs()) {
        if (archive.read(kept.digest()).isPresent()) {
          return Optional.empty();
        }
      }
    }
    return Optional.of(
        Answer.refused(
            "error: "
                + StoreText.OTHER_ARCHIVE
                    .with(archive.where(), issues.get(0).get(0), issues.get(0).get(4))
                    .inWords()));
  }

  private SharedArchive() {}
}
