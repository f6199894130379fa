package gradepost.pack;

/** A kind of paper that a pack is printed as. */
public enum PaperKind {
  BRIEFING,
  SIGN_OFF,
  CARDS,
  /** The road sheets, large, for the wall of a mess room. */
  WALL;

  /** As it is typed. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
