package gradepost.reissue.register;

/** The register cannot do what was asked for; the message says why, for whoever asked. */
public final class RegisterException extends Exception {
  private static final long serialVersionUID = 1L;

  public RegisterException(String message) {
    super(message);
  }

  public RegisterException(String message, Throwable cause) {
    super(message, cause);
  }
}
