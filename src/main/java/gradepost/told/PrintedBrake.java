package gradepost.told;

/**
 * A brake as it is named in a fallback.
 *
 * @param called its short name; the whole one for the emergency application
 */
public record PrintedBrake(String called, Kind kind) {

  /** What it is for. */
  public enum Kind {
    /** The brake that is planned with. */
    SERVICE,
    /** The automatic brake, or another one to fall back on. */
    FALLBACK,
    /** The last resort. */
    EMERGENCY
  }
}
