package gradepost.reissue.register;

import gradepost.text.Mistake;
import java.sql.SQLException;

/** The register cannot do what was asked for; the message says why, for whoever asked. */
public final class RegisterException extends Exception {
  private static final long serialVersionUID = 1L;

  /** Refuses for this reason. */
  public RegisterException(Mistake mistake) {
    super(mistake.inWords());
  }

  RegisterException(Mistake mistake, Throwable cause) {
    super(mistake.inWords(), cause);
  }

  /**
   * Whether the database did not answer, and may do so in a while: it begins, ends, or is cut off.
   */
  public boolean isAway() {
    for (Throwable each = getCause(); each != null; each = each.getCause()) {
      if (each instanceof SQLException sql) {
        String state = String.valueOf(sql.getSQLState());
        return state.startsWith("08") || state.startsWith("57P");
      }
    }
    return false;
  }
}
