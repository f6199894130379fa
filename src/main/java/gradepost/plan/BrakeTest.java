package gradepost.plan;

import gradepost.route.BrakeTestPlace;
import java.util.Optional;

/**
 * A running brake test: made in the run, or why there is no room for it. What it shows is that of
 * the run; where there is no room, of a train that makes it at its place and its speed.
 *
 * @param atM distance run of the place
 * @param plannedMps planned speed there
 * @param pressurePa cylinder pressure to ask for: the policy's first application
 * @param heldS how long it is held
 * @param speedAfterMps speed after that
 * @param decelerationMps2 at the end of it
 * @param endM distance run where the brake is off again
 * @param noRoom why the run does not make it; empty where it does
 */
public record BrakeTest(
    BrakeTestPlace place,
    double atM,
    double plannedMps,
    double pressurePa,
    double heldS,
    double speedAfterMps,
    double decelerationMps2,
    double endM,
    Optional<NoRoom> noRoom) {

  /** Whether the run makes it. */
  public boolean made() {
    return noRoom.isEmpty();
  }

  /**
   * Why there is no room, and where there is.
   *
   * @param is the speed with which a run that makes it comes to the place, m/s; how long the brake
   *     would be off, or takes to be full again, s; 0 where the reason needs none
   * @param instead the next place of the leg with room; empty where there is none, or it was not
   *     looked for
   */
  public record NoRoom(Reason reason, double is, Optional<Instead> instead) {
    /** Before another place is looked for. */
    public NoRoom(Reason reason, double is) {
      this(reason, is, Optional.empty());
    }

    /** The same with another place. */
    public NoRoom with(Optional<Instead> other) {
      return new NoRoom(reason, is, other);
    }

    /** Why there is no room. */
    public enum Reason {
      /** The train does not reach the speed of the test. */
      SLOW,
      /** It is faster, and does not come down to it without a brake. */
      FAST,
      /** The brake is on for a target, or has to go on before the test is over. */
      BRAKING,
      /** The brake holds the speed on a falling gradient. */
      CHECKED,
      /** The brake goes on again sooner than the policy wants. */
      AGAIN,
      /** The brake is not full again when it goes on. */
      RECHARGE,
      /** No way of driving that makes it was found. */
      NO_WAY
    }
  }

  /** Another place, on the print grid, and the speed of the train there if it is made there. */
  public record Instead(double atM, double mps) {}
}
