package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.util.Optional;

/** Something that is done with an open register. What goes wrong is told, never thrown. */
interface OnRegister {
  /** What came of it. */
  Answer with(Register register) throws RegisterException, IOException;

  /** Something that is done with one of its issues. */
  interface OfIssue {
    /** What came of it. */
    Answer with(Register register, Entry issue) throws RegisterException, IOException;
  }

  /** Does it with the issue that is called so; where there is none, says so. */
  static Answer of(Store store, String called, OfIssue act) {
    return of(
        store,
        register -> {
          Optional<Entry> issue = register.find(called);
          return issue.isPresent()
              ? act.with(register, issue.get())
              : Store.unknown(register, called);
        });
  }

  /** Does it with the register of this store; where there is none, says so. */
  static Answer of(Store store, OnRegister act) {
    if (!store.exists()) {
      return store.missing();
    }
    try (Register register = store.open()) {
      return act.with(register);
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }
}
