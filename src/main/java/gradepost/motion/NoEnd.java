package gradepost.motion;

/**
 * A run or a search that reached its bound without an end. It never stands for a value: the result
 * is not known, and no paper may be made from it.
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
