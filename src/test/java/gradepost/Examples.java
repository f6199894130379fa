package gradepost;

/**
 * How many examples of a property are tried: a few in an ordinary run, which must be short, and all
 * in the long profile, or with {@code -Dgradepost.all}.
 */
public final class Examples {
  private static final boolean ALL = Boolean.getBoolean("gradepost.all");

  /** The number to try. */
  public static int of(int few, int all) {
    return ALL ? all : few;
  }

  private Examples() {}
}
