package gradepost.desk.entry;

/** A request that is answered by another page. */
public final class ElseWhere extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final String path;

  ElseWhere(String path) {
    super(path);
    this.path = path;
  }

  /** The path of that page, on this desk. */
  public String path() {
    return path;
  }
}
