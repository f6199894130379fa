package gradepost.ride;

/**
 * A handle movement that the stock forbids.
 *
 * @param atM where it was made, distance run of the front
 * @param atS when, seconds since the start
 * @param from index of the notch before it, −1 for off
 * @param to and behind it
 */
public record ForbiddenMovement(double atM, double atS, int from, int to, Why why) {
  /** What is wrong with it. */
  public enum Why {
    /** Back to a lower notch, where the controller has to go to off first. */
    DOWN,
    /** Over a notch, sooner than the notches take. */
    SKIPPED,
    /** Power, or more of it, with the brake on. */
    BRAKE_ON
  }
}
