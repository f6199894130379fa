package gradepost.drive;

import gradepost.stock.BrakeSystem;
import java.util.Optional;

/** Something that the driver or the clerk must know, printed where he meets it. */
public sealed interface Finding {

  /** The warning board stands after the planned braking point, or nothing warns at all. */
  record BoardTooLate(double boardM, double plannedM) implements Finding {}

  /** Nothing at the lineside announces the reduction. */
  record NoBoard() implements Finding {}

  /** The permissible speed falls by a third or more, or by more than 20 mph. */
  record BigDrop(double fromMps, double toMps) implements Finding {}

  /** The platform is shorter than the train. */
  record PlatformTooShort(double platformM, double trainM, String doorInstruction)
      implements Finding {}

  /** No stop mark is supplied for this number of cars: the platform end stands in for it. */
  record NoStopMark(int cars) implements Finding {}

  /**
   * No planned braking point exists.
   *
   * @param service where full service holds at the latest, or why nowhere
   */
  record NoBrakingPoint(String adhesion, Latest service) implements Finding {}

  /** The stop mark is nearer to the buffer stops than the policy's margin. */
  record NearBuffers(double distanceM, double marginM) implements Finding {}

  /**
   * At the braking point the reservoirs have not filled again since the last release.
   *
   * @param planned whether planned braking uses this brake; else it is the fallback, and the
   *     figures are for a train that needed it in full the last time too
   * @param afterS since that release
   * @param givesPa the most that it then has
   */
  record LessToGive(BrakeSystem brake, boolean planned, double afterS, double givesPa)
      implements Finding {}

  /** Rolling on from the planned braking point with no brake, the train meets the buffer stops. */
  record AtBuffers(double speedMps) implements Finding {}

  /**
   * Many runs in which nothing is corrected are still too fast at the board.
   *
   * @param share of them
   * @param earlierM how much earlier the braking would have to begin for one in ten to be too fast;
   *     empty if one in ten never comes to the speed of the board
   */
  record OftenLate(double share, Optional<Double> earlierM) implements Finding {}

  /** This share of the uncorrected runs is still too fast where the route data end. */
  record SometimesNotHeld(double share) implements Finding {}

  /**
   * A running brake test made at its place runs into a braking point.
   *
   * @param endM where its brake is off again
   */
  record BrakeTestTooNear(double testM, double endM, double brakingM) implements Finding {}

  /** The planned stop from its printed instructions ends outside the tolerance. */
  record StopOutsideTolerance(double shortM, double toleranceM) implements Finding {}

  /** The train cannot reach or hold a useful speed: stalls on the gradient. */
  record Stalls(double atM) implements Finding {}

  /** Run again from its printed numbers, the plan breaks the permissible speed. */
  record OverCeiling(double atM, double speedMps, double ceilingMps) implements Finding {}

  /** Run again, the plan asks for a handle movement that the stock forbids. */
  record ForbiddenMovement(double atM, Command command) implements Finding {}

  /** Run again, what an action waits for never comes. */
  record NeverComes(double atM, Trigger trigger) implements Finding {}

  /**
   * The train cannot be braked for a target: the cause of a failure whose consequences are other
   * findings.
   *
   * @param atM where the cause lies: the fall, or where the room begins
   * @param permille the gradient there, falling negative
   * @param entryMps the speed that the train has at the target before
   * @param mainPa the main application that it is planned with
   */
  record CannotBrake(
      Target target, Cause cause, double atM, double permille, double entryMps, double mainPa)
      implements Finding {

    /** What keeps it from being braked for. */
    public enum Cause {
      /** The main application does not slow the train on the fall there. */
      FALL,
      /** From the target before there is too little room. */
      TOO_NEAR,
      /** Neither: the brake is enough, but the printed instructions do not meet the target. */
      UNKNOWN
    }

    /** Whether a failure may be the consequence of a target that cannot be braked for. */
    public static boolean causes(Finding failure) {
      return failure instanceof OverCeiling
          || failure instanceof StopOutsideTolerance
          || failure instanceof NeverComes;
    }
  }
}
