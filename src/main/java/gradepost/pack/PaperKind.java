package gradepost.pack;

/** A kind of paper that a pack is printed as. */
public enum PaperKind {
  BRIEFING,
  SIGN_OFF,
  /** Questions with their answers, for learners at home. */
  PRACTICE,
  CARDS,
  /** The road sheets, large, for the wall of a mess room. */
  WALL;

  /** Whether it has questions, for which the policy needs rules. */
  public boolean asks() {
    return this == SIGN_OFF || this == PRACTICE;
  }

  /** As it is typed. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
