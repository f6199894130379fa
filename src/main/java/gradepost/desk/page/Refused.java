package gradepost.desk.page;

import gradepost.text.Mistake;
import io.javalin.http.HttpStatus;

/** A request that is not answered as it was asked. */
public final class Refused extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final HttpStatus status;
  private final transient Mistake why;
  private final boolean maySendAgain;

  /** Answers with this status, and says why. */
  public Refused(HttpStatus status, Mistake why) {
    this(status, why, false);
  }

  private Refused(HttpStatus status, Mistake why, boolean maySendAgain) {
    super(why.inWords());
    this.status = status;
    this.why = why;
    this.maySendAgain = maySendAgain;
  }

  /**
   * The same for a form of this desk that comes too late: the desk was begun again since, or
   * somebody signed out. Its page holds what was sent, to be sent again.
   */
  public static Refused tooLate(Mistake why) {
    return new Refused(HttpStatus.FORBIDDEN, why, true);
  }

  /** The status of the answer. */
  public HttpStatus status() {
    return status;
  }

  /** Whether what was sent is to be shown again, so that it is not lost. */
  public boolean maySendAgain() {
    return maySendAgain;
  }

  /** What is said. */
  public Mistake why() {
    return why;
  }
}
