package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Store;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;

/** Something that is done with an open register. What goes wrong is told, never thrown. */
interface OnRegister {
  /** What came of it. */
  Answer with(Register register) throws RegisterException, IOException;

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
