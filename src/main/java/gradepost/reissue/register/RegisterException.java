package gradepost.reissue.register;

import gradepost.text.Mistake;

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
}
