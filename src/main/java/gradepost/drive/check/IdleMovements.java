package gradepost.drive.check;

import gradepost.drive.brake.Slack;
import gradepost.plan.Action;
import gradepost.policy.Policy;
import java.util.List;

/**
 * Movements that a driver would not have made: power for a moment, a brake let go for a moment, a
 * checking application that is still on where the next braking begins.
 */
public final class IdleMovements {
  private final Least least;
  private double onS = Double.NaN;
  private double offS = Double.NEGATIVE_INFINITY;
  private double brakedS = Double.NaN;
  private double releasedS = Double.NEGATIVE_INFINITY;
  private boolean checking;

  private IdleMovements(Least least) {
    this.least = least;
  }

  /**
   * What a driver keeps to at least, seconds.
   *
   * @param powerS power is on
   * @param heldS a first application is held: one that comes off sooner is not felt
   * @param brakeOffS a brake is let go: one that goes on again sooner had better stayed on
   * @param powerOffS power is off: else it had better stayed on, or off for longer
   */
  public record Least(double powerS, double heldS, double brakeOffS, double powerOffS) {
    /** As a policy has them. */
    public static Least of(Policy policy) {
      return new Least(
          policy.run().leastPower().seconds(),
          policy.restriction().firstHeld().seconds(),
          policy.practice().brake().offAtLeast().seconds(),
          policy.practice().power().offAtLeast().seconds());
    }
  }

  /** Movements of a handle: all actions but to stand. */
  public static long moves(List<Action> actions) {
    return actions.stream().filter(a -> !a.command().isStand()).count();
  }

  /** How often power is taken off again too soon, the brake put on again too soon, or kept on. */
  public static long count(List<Action> actions, Least least) {
    IdleMovements run = new IdleMovements(least);
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
    return now < offS + least.powerOffS();
  }

  private boolean shutOff(double now) {
    boolean soon = now < onS + least.powerS() - Slack.TIME_S;
    onS = Double.NaN;
    offS = now;
    return soon;
  }

  private boolean brake(double now, boolean checks) {
    brakedS = Double.isNaN(brakedS) ? now : brakedS;
    boolean idle = now < releasedS + least.brakeOffS() || (checking && !checks);
    checking = checks;
    releasedS = Double.NEGATIVE_INFINITY;
    return idle;
  }

  private boolean release(double now) {
    boolean soon = now < brakedS + least.heldS() - Slack.TIME_S;
    brakedS = Double.NaN;
    releasedS = now;
    checking = false;
    return soon;
  }
}
