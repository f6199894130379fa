package gradepost.told;

/** What set a braking point, in two words on paper. */
public enum PrintedSetBy {
  /** The braking itself. */
  COMPUTED,
  /** The landmark that it stands at. */
  CUE,
  /** The next brake, which must still be enough. */
  NEXT_BRAKE,
  /** Runs that would be late. */
  LATE_SHARE
}
