package gradepost.motion;

/**
 * A run or a search that had come to no end within its bound. It is never a value: what was looked
 * for is not known, and no paper may be made of it.
 */
public final class NoEnd extends RuntimeException {
  private static final long serialVersionUID = 1;

  /**
   * @param what was being worked out, and the bound, in words
   */
  public NoEnd(String what) {
    super(what);
  }
}
