package gradepost.app.store;

import java.io.IOException;

/** A train whose run cannot be worked out, so that its papers cannot be made. */
public final class Unplanned extends IOException {
  private static final long serialVersionUID = 1;

  /**
   * @param what file and paper, and why, in words
   */
  public Unplanned(String what, Throwable cause) {
    super(what, cause);
  }
}
