package gradepost.app.making;

import gradepost.app.issue.Concern;
import gradepost.app.issue.Layout;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import java.util.Optional;

/** Where an issue is kept and entered when it is made. */
public interface Registry {
  /** What its files are kept in. */
  Archive archive();

  /** Whom the issue concerns. */
  Concern concern(Layout layout, String pack) throws RegisterException;

  /**
   * Enters it.
   *
   * @param checker empty for a draft
   * @param told what there is to tell of it
   */
  void enter(Entry entry, Optional<String> checker, Answer told) throws RegisterException;

  /**
   * A register that several threads have in common, an act for each issue.
   *
   * @param reason why there are these issues, in words
   */
  static Registry of(Register register, Archive archive, By by, Optional<String> reason) {
    return new Registry() {
      @Override
      public Archive archive() {
        return archive;
      }

      @Override
      public Concern concern(Layout layout, String pack) throws RegisterException {
        return Concerns.of(register, layout, pack);
      }

      @Override
      public void enter(Entry entry, Optional<String> checker, Answer told)
          throws RegisterException {
        // The register has one connection: one act at a time.
        synchronized (register) {
          register.issue(by, entry, checker, reason);
        }
      }
    };
  }
}
