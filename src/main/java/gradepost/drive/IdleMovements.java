package gradepost.drive;

import java.util.List;

/**
 * Movements that a driver would not have made: power for a moment, a brake let go for a moment, a
 * checking application that is still on where the next braking begins.
 */
final class IdleMovements {
  /** A brake that goes on again sooner than this had better stayed on, seconds. */
  private static final double LET_GO_S = 8;

  /**
   * Power that is taken again sooner than this had better stayed on, or off for longer, seconds.
   */
  static final double OFF_S = 5;

  /**
   * How often power is taken off again too soon, the brake put on again too soon, or kept on.
   *
   * @param leastS the policy's least time of power
   * @param heldS its time of the first application: one that comes off sooner is not felt
   */
  static long count(List<Action> actions, double leastS, double heldS) {
    long count = 0;
    double onS = Double.NaN;
    double offS = Double.NEGATIVE_INFINITY;
    double brakedS = Double.NaN;
    double releasedS = Double.NEGATIVE_INFINITY;
    boolean checking = false;
    for (Action action : actions) {
      double now = action.timeS();
      if (action.command() instanceof Command.Power && Double.isNaN(onS)) {
        onS = now;
        count += now < offS + OFF_S ? 1 : 0;
      } else if (action.command() instanceof Command.ShutOff) {
        count += now < onS + leastS - 1e-6 ? 1 : 0;
        onS = Double.NaN;
        offS = now;
      } else if (action.command() instanceof Command.Release) {
        count += now < brakedS + heldS - 1e-6 ? 1 : 0;
        brakedS = Double.NaN;
        releasedS = now;
        checking = false;
      } else if (action.command() instanceof Command.Brake brake) {
        brakedS = Double.isNaN(brakedS) ? now : brakedS;
        boolean checks = brake.stage() == Command.Stage.CHECK;
        count += now < releasedS + LET_GO_S || (checking && !checks) ? 1 : 0;
        checking = checks;
        releasedS = Double.NEGATIVE_INFINITY;
      }
    }
    return count;
  }

  private IdleMovements() {}
}
