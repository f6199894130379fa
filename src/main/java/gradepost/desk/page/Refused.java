package gradepost.desk.page;

import gradepost.text.Mistake;
import io.javalin.http.HttpStatus;

/** A request that is not answered as it was asked. */
public final class Refused extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final HttpStatus status;
  private final transient Mistake why;

  /** Answers with this status, and says why. */
  public Refused(HttpStatus status, Mistake why) {
    super(why.inWords());
    this.status = status;
    this.why = why;
  }

  /** The status of the answer. */
  public HttpStatus status() {
    return status;
  }

  /** What is said. */
  public Mistake why() {
    return why;
  }
}
