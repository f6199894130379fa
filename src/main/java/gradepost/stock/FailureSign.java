package gradepost.stock;

import java.util.Optional;

/**
 * A sign that a brake has failed.
 *
 * @param brake the short name of that brake
 * @param what the driver sees, hears or feels
 * @param shows what a gauge then shows; empty where it is no gauge, or no pressure tells
 */
public record FailureSign(String brake, By by, String what, Optional<GaugeReading> shows) {

  /** How the driver meets it. */
  public enum By {
    /** A lamp is lit, or is out. */
    LAMP,
    /** Something is heard, or no longer heard. */
    SOUND,
    /** A gauge shows it. */
    GAUGE,
    /** The train does not slow as it should. */
    FEEL
  }
}
