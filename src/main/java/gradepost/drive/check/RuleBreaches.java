package gradepost.drive.check;

import gradepost.drive.brake.Slack;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Finding.Rule;
import gradepost.plan.Finding.RuleBroken;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.policy.Policy;
import gradepost.policy.TaughtRules;
import gradepost.stock.Traction;
import gradepost.units.Span;
import java.util.ArrayList;
import java.util.List;

/**
 * Where a run breaks the policy's rules of driving: power or a brake for a moment, power in a notch
 * that gives nothing, a brake in the same moment as power comes off, more movements than a driver
 * can keep in mind. Nothing of how the run was found is known here.
 */
public final class RuleBreaches {
  /** One mile, for the number of movements, metres. */
  private static final double MILE_M = 1609.344;

  private final Limits limits;
  private final Effort effort;
  private final List<Trace.Point> points;
  private final List<Breach> found = new ArrayList<>();
  private double onS = Double.NaN;
  private double offS = Double.NEGATIVE_INFINITY;
  private double deadS;
  private int notch = -1;
  private double notchS;
  private double brakedS = Double.NaN;
  private double releasedS = Double.NEGATIVE_INFINITY;
  private boolean checking;
  private boolean testing;
  private int hasty;
  private double holdUntilM = Double.NEGATIVE_INFINITY;
  private int point;

  private RuleBreaches(Limits limits, Effort effort, List<Trace.Point> points) {
    this.limits = limits;
    this.effort = effort;
    this.points = points;
  }

  /**
   * What a driver keeps to, seconds where nothing else is said.
   *
   * @param powerS power is on at least
   * @param heldS a first application is held at least
   * @param brakeOffS a brake is off at least
   * @param powerOffS power is off at least
   * @param coastS power is off before the brake goes on for a target, at least
   * @param taught what else is not taught
   * @param notchS each notch is kept at most; infinite for a running notch
   */
  public record Limits(
      double powerS,
      double heldS,
      double brakeOffS,
      double powerOffS,
      double coastS,
      TaughtRules taught,
      List<Double> notchS) {
    public Limits {
      notchS = List.copyOf(notchS);
    }

    /** Where every notch is a running notch. */
    public Limits(
        double powerS,
        double heldS,
        double brakeOffS,
        double powerOffS,
        double coastS,
        TaughtRules taught) {
      this(powerS, heldS, brakeOffS, powerOffS, coastS, taught, List.of());
    }

    private double longestS(int notch) {
      return notch < notchS.size() ? notchS.get(notch) : Double.POSITIVE_INFINITY;
    }

    /** As a policy and a power handle have them. */
    public static Limits of(Policy policy, Traction traction) {
      TaughtRules taught = policy.practice().taught();
      return new Limits(
          policy.run().leastPower().seconds(),
          policy.restriction().firstHeld().seconds(),
          policy.practice().brake().offAtLeast().seconds(),
          policy.practice().power().offAtLeast().seconds(),
          policy.run().coastBeforeBraking().seconds(),
          taught,
          traction.notches().stream()
              .map(n -> n.longest().map(Span::seconds).orElse(Double.POSITIVE_INFINITY))
              .toList());
    }
  }

  /** What a notch gives the train at a speed. */
  @FunctionalInterface
  public interface Effort {
    /** Tractive effort over the inertia of the train, m/s². */
    double mps2(int notch, double speedMps);
  }

  /**
   * A rule that is broken.
   *
   * @param approach number of the one whose sheet tells the action
   */
  public record Breach(int approach, RuleBroken what) {}

  /** Movements of a handle: all actions but to stand. */
  public static long moves(List<Action> actions) {
    return actions.stream().filter(a -> !a.command().isStand()).count();
  }

  /**
   * All of a run, in the order of the actions that break them; those of a mile last.
   *
   * @param points of the same run
   */
  public static List<Breach> of(
      List<Action> actions, List<Trace.Point> points, Limits limits, Effort effort) {
    RuleBreaches run = new RuleBreaches(limits, effort, points);
    actions.forEach(run::look);
    run.miles(actions);
    return List.copyOf(run.found);
  }

  /**
   * How many there are along a part of a run that another way of driving could mend, those of a
   * mile and of a dead notch left out: what a dead notch costs is told by the power that it cuts
   * short. A checking application that is still on where the next braking begins is one, and a
   * brake that is let go for a moment two.
   */
  public static long count(
      List<Action> actions, List<Trace.Point> points, Limits limits, Effort effort) {
    RuleBreaches run = new RuleBreaches(limits, effort, points);
    actions.forEach(run::look);
    long counted = run.found.stream().filter(b -> b.what().broken() != Rule.DEAD_NOTCH).count();
    return counted + run.hasty;
  }

  private void look(Action action) {
    action
        .command()
        .act(
            power -> power(action, power.notch()),
            off -> shutOff(action),
            brake -> brake(action, brake),
            release -> release(action),
            stand -> stand(),
            hold -> holdUntilM = hold.untilM());
  }

  private void power(Action action, int to) {
    if (Double.isNaN(onS)) {
      onS = action.timeS();
      deadS = 0;
      atLeast(Rule.POWER_AGAIN, action, action.timeS() - offS, limits.powerOffS);
    } else {
      leaveNotch(action);
    }
    notch = to;
    notchS = action.timeS();
  }

  private void shutOff(Action action) {
    leaveNotch(action);
    atLeast(Rule.POWER_SHORT, action, action.timeS() - onS - deadS, limits.powerS);
    onS = Double.NaN;
    notch = -1;
    offS = action.timeS();
  }

  /** A running brake test is no application again; what follows on it is one. */
  private void brake(Action action, Command.Brake brake) {
    boolean checks = brake.checks();
    if (Double.isNaN(brakedS)) {
      brakedS = action.timeS();
      testing = brake.tests();
      if (!checks) {
        atLeast(Rule.BRAKE_AT_ONCE, action, action.timeS() - offS, limits.coastS);
      }
      double againS = testing ? Double.POSITIVE_INFINITY : action.timeS() - releasedS;
      // A speed that is held is a reason to apply again, and the sheet tells it.
      double wantedS =
          holds(action, holdUntilM)
              ? limits.brakeOffS
              : Math.max(limits.brakeOffS, limits.taught.appliedAgain().seconds());
      atLeast(Rule.BRAKE_AGAIN, action, againS, wantedS);
      hasty += againS < Math.min(limits.brakeOffS, wantedS) - Slack.TIME_S ? 1 : 0;
    }
    hasty += checking && !checks ? 1 : 0;
    checking = checks;
  }

  private void release(Action action) {
    atLeast(Rule.BRAKE_SHORT, action, action.timeS() - brakedS, testing ? 0 : limits.heldS);
    testing = false;
    brakedS = Double.NaN;
    releasedS = action.timeS();
    checking = false;
  }

  /** Standing, a driver may do at once what he does next. */
  private void stand() {
    brakedS = Double.NaN;
    testing = false;
    releasedS = Double.NEGATIVE_INFINITY;
    offS = Double.NEGATIVE_INFINITY;
    checking = false;
  }

  private void atLeast(Rule rule, Action action, double is, double wanted) {
    if (is < wanted - Slack.TIME_S) {
      found.add(
          new Breach(
              action.approach(), new RuleBroken(rule, action.atM(), Math.max(0, is), wanted)));
    }
  }

  /** Judges how long the notch that is left here was kept, and how long it gave nothing. */
  private void leaveNotch(Action action) {
    double keptS = action.timeS() - notchS;
    if (notch >= 0 && keptS > limits.longestS(notch) + Slack.TIME_S) {
      found.add(
          new Breach(
              action.approach(),
              new RuleBroken(Rule.NOTCH_KEPT, action.atM(), keptS, limits.longestS(notch))));
    }
    double most = limits.taught.deadNotch().seconds();
    if (notch < 0 || action.timeS() - notchS <= most) {
      return;
    }
    while (point > 0 && points.get(point).timeS() > notchS) {
      point--;
    }
    double dead = 0;
    for (; point + 1 < points.size() && points.get(point).timeS() < action.timeS(); point++) {
      double from = Math.max(points.get(point).timeS(), notchS);
      double to = Math.min(points.get(point + 1).timeS(), action.timeS());
      boolean gives =
          effort.mps2(notch, points.get(point).speedMps())
              >= limits.taught.notchGives().metresPerSecond2();
      dead += gives ? 0 : Math.max(0, to - from);
    }
    if (dead > most + Slack.TIME_S) {
      deadS += dead;
      found.add(
          new Breach(action.approach(), new RuleBroken(Rule.DEAD_NOTCH, action.atM(), dead, most)));
    }
  }

  /** Miles with too many movements, none of them twice. */
  private void miles(List<Action> actions) {
    List<Action> moves = ofTheirOwn(actions);
    int most = limits.taught.movements();
    for (int i = 0; i < moves.size(); i++) {
      double endM = moves.get(i).atM() + MILE_M;
      int in = i;
      while (in < moves.size() && moves.get(in).atM() <= endM) {
        in++;
      }
      if (in - i > most) {
        Action from = moves.get(i);
        found.add(
            new Breach(from.approach(), new RuleBroken(Rule.MOVEMENTS, from.atM(), in - i, most)));
        i = in - 1;
      }
    }
  }

  /** Those that a driver has to keep in mind: to hold a speed is one, however often it needs. */
  private static List<Action> ofTheirOwn(List<Action> actions) {
    List<Action> own = new ArrayList<>();
    double untilM = Double.NEGATIVE_INFINITY;
    for (Action action : actions) {
      if (isOfItsOwn(action) && !holds(action, untilM)) {
        own.add(action);
      }
      untilM = action.command().hold().map(Command.Hold::untilM).orElse(untilM);
    }
    return own;
  }

  /**
   * Whether a movement is one of those with which a speed is held, and not told by itself.
   *
   * @param untilM where the hold that was told last ends
   */
  private static boolean holds(Action action, double untilM) {
    return action.atM() < untilM - Slack.PLACE_M
        || (action.atM() < untilM + Slack.PLACE_M && !action.command().isPower());
  }

  /** Not a further notch, which comes by itself after some seconds; nor to stand. */
  private static boolean isOfItsOwn(Action action) {
    boolean further =
        action.command().isPower() && !action.command().takesPower() && waits(action.trigger());
    return !action.command().isStand() && !further;
  }

  private static boolean waits(Trigger trigger) {
    return trigger.match(
        place -> false, up -> false, down -> false, after -> true, start -> false, stand -> false);
  }
}
