package gradepost.drive.brake;

/**
 * By how little two numbers may differ that mean the same. The first three are what the solver of
 * motion leaves when it stops at a place, a speed or a time; none is anywhere near what is printed.
 */
public final class Slack {
  /** A place that the train was stopped at is met this closely, m. */
  public static final double PLACE_M = 1e-6;

  /** A speed that the train was stopped at is met this closely, m/s. */
  public static final double SPEED_MPS = 1e-6;

  /** A time that the train was stopped at is met this closely, s. */
  public static final double TIME_S = 1e-6;

  /** A number of printed units so near a whole one is that one. */
  public static final double UNITS = 1e-6;

  /** What arithmetic alone leaves, of metres, m/s, seconds, shares and steps. */
  public static final double ROUNDING = 1e-9;

  /** So far before a place is before it and nothing lies between, m. */
  public static final double JUST_BEFORE_M = 1e-3;

  /** A train that gathers no more than this keeps its speed, m/s². */
  public static final double STEADY_MPS2 = 0.01;

  private Slack() {}
}
