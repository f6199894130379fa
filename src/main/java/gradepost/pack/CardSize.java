package gradepost.pack;

/** The finished size of a cab card. */
public enum CardSize {
  A5_PORTRAIT("A5 portrait"),
  A5_LANDSCAPE("A5 landscape"),
  A6_PORTRAIT("A6 portrait"),
  A6_LANDSCAPE("A6 landscape");

  private final String word;

  CardSize(String word) {
    this.word = word;
  }

  /** As it is typed. */
  public String word() {
    return word;
  }
}
