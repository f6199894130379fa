package gradepost.yaml;

/** How much a problem weighs. */
public enum Severity {
  /** Nothing is made from the file. */
  ERROR,
  /** The file is used; someone should look. */
  WARNING,
  /** Worth knowing. */
  NOTE;

  /** How it is written in a message. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
