package gradepost.app.issue;

import gradepost.app.store.Answer;
import gradepost.app.store.FailOn;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.pack.PackFile;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Packs whose files are other ones than those of the issue whose number they have. Whoever checked
 * that issue has not checked these, whatever the files say of him.
 */
public final class SinceIssued {
  /** The last issues of those that were edited, by the ids of the packs. */
  private final Map<String, String> edited = new HashMap<>();

  /**
   * Asks for these packs.
   *
   * @param store with the register; where there is none, or it knows nothing of a pack, the files
   *     of the pack are taken at their word
   */
  public SinceIssued(Optional<Store> store, List<PackFile> packs) throws RegisterException {
    if (store.filter(Store::exists).isPresent()) {
      try (Register register = store.get().open()) {
        for (PackFile pack : packs) {
          Optional<Entry> last = register.latest(pack.id());
          if (last.isPresent() && !isIssued(pack, register)) {
            edited.put(pack.id(), last.get().name());
          }
        }
      }
    }
  }

  private static boolean isIssued(PackFile pack, Register register) throws RegisterException {
    return register
        .issue(pack.id(), pack.issue().number())
        .filter(issue -> issue.fingerprint().equals(Issue.fingerprint(pack.inputs())))
        .isPresent();
  }

  /** A pack as its papers may say: a draft where its files were edited. */
  public PackFile printed(PackFile pack) {
    return edited.containsKey(pack.id()) ? pack.checked(Optional.empty()) : pack;
  }

  /** What is told where the name of a checker is not printed. */
  public Answer told(Path file, PackFile pack, FailOn failOn) {
    String issue = edited.getOrDefault(pack.id(), "");
    return issue.isEmpty() || pack.issue().checker().isEmpty()
        ? Answer.GOOD
        : new Answer(
            List.of(),
            List.of(),
            List.of(IssueText.EDITED.with(file.toString(), issue).inWords()),
            failOn != FailOn.WARNINGS);
  }
}
