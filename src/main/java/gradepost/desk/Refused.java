package gradepost.desk;

import gradepost.text.Mistake;
import io.javalin.http.HttpStatus;

/** A request that is not answered as it was asked. */
final class Refused extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final HttpStatus status;
  private final transient Mistake why;

  Refused(HttpStatus status, Mistake why) {
    super(why.inWords());
    this.status = status;
    this.why = why;
  }

  HttpStatus status() {
    return status;
  }

  Mistake why() {
    return why;
  }
}
