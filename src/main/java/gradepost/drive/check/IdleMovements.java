package gradepost.drive.check;

import gradepost.plan.Action;
import java.util.List;

/**
 * Movements that a driver would not have made: power for a moment, a brake let go for a moment, a
 * checking application that is still on where the next braking begins.
 */
public final class IdleMovements {
  /** A brake that goes on again sooner than this had better stayed on, seconds. */
  private static final double LET_GO_S = 8;

  /**
   * Power that is taken again sooner than this had better stayed on, or off for longer, seconds.
   */
  public static final double OFF_S = 5;

  private final double leastS;
  private final double heldS;
  private double onS = Double.NaN;
  private double offS = Double.NEGATIVE_INFINITY;
  private double brakedS = Double.NaN;
  private double releasedS = Double.NEGATIVE_INFINITY;
  private boolean checking;

  private IdleMovements(double leastS, double heldS) {
    this.leastS = leastS;
    this.heldS = heldS;
  }

  /**
   * How often power is taken off again too soon, the brake put on again too soon, or kept on.
   *
   * @param leastS the policy's least time of power
   * @param heldS its time of the first application: one that comes off sooner is not felt
   */
  public static long count(List<Action> actions, double leastS, double heldS) {
    IdleMovements run = new IdleMovements(leastS, heldS);
    return actions.stream().filter(run::idle).count();
  }

  /** Whether the next action of the run is one of them. */
  private boolean idle(Action action) {
    double now = action.timeS();
    return action
        .command()
        .match(
            power -> power(now),
            off -> shutOff(now),
            brake -> brake(now, brake.checks()),
            release -> release(now),
            stand -> false);
  }

  private boolean power(double now) {
    if (!Double.isNaN(onS)) {
      return false;
    }
    onS = now;
    return now < offS + OFF_S;
  }

  private boolean shutOff(double now) {
    boolean soon = now < onS + leastS - 1e-6;
    onS = Double.NaN;
    offS = now;
    return soon;
  }

  private boolean brake(double now, boolean checks) {
    brakedS = Double.isNaN(brakedS) ? now : brakedS;
    boolean idle = now < releasedS + LET_GO_S || (checking && !checks);
    checking = checks;
    releasedS = Double.NEGATIVE_INFINITY;
    return idle;
  }

  private boolean release(double now) {
    boolean soon = now < brakedS + heldS - 1e-6;
    brakedS = Double.NaN;
    releasedS = now;
    checking = false;
    return soon;
  }
}
