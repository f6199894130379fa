package gradepost.drive;

import gradepost.drive.RandomLine.Halt;
import gradepost.drive.RandomLine.Slack;
import gradepost.drive.RandomLine.Slope;
import gradepost.policy.AdhesionCase;
import gradepost.policy.CorrectionPractice;
import gradepost.policy.Policy;
import gradepost.policy.Practice;
import gradepost.policy.SafeSide;
import gradepost.route.Signal;
import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.stock.LoadCase;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.task.Assignment;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;

/** Lines that bring out one thing, for the invented unit. */
public final class MadeUp {
  /** Three and a half miles, all but the first platform falling, and a stop on the fall. */
  static RandomLine falling(double permille, Policy policy) {
    double step = UnitStyle.MILES.placeStepM();
    double length = 280 * step;
    return new RandomLine(
        UnitStyle.MILES,
        length,
        length,
        18,
        List.of(new Slope(0, 14 * step, 0), new Slope(14 * step, length, -permille)),
        List.of(),
        List.of(new Slack(70 * step, 78 * step, 13.4112)),
        List.of(),
        List.of(
            new Halt(2 * step, 12 * step, false),
            new Halt(150 * step, 160 * step, false),
            new Halt(264 * step, 274 * step, false)),
        List.of(),
        Mill.stock(),
        policy,
        Mill.stock().formations().get(0),
        LoadCase.SEATED,
        Direction.FORWARD);
  }

  /** 1 in 37, and only so many of the four brakes are counted on. */
  public static Assignment steep(double isolatedShare) {
    return falling(27, isolated(isolatedShare)).assignment();
  }

  /** 1 in 37 with hardly any adhesion in the last state of the rail. */
  public static Assignment slippery() {
    Policy p = Mill.policy();
    AdhesionCase low = new AdhesionCase("low", new ConstantAdhesion(0.02), "");
    List<AdhesionCase> cases = List.of(p.adhesion().get(0), p.adhesion().get(1), low);
    return falling(27, with(cases, p.safeSide())).assignment();
  }

  /** One of the lines that a railway could have; none has signals. */
  public static Assignment random(long seed) {
    return RandomLines.of(seed).assignment();
  }

  /** The same with one stop signal. */
  public static Assignment signalled(Assignment a, Location at) {
    Signal signal =
        new Signal(
            "M1",
            Signal.Kind.STOP,
            at,
            a.direction(),
            a.lines().iterator().next(),
            Optional.empty(),
            List.of(),
            "");
    return Changed.route(a, "signals", List.of(signal));
  }

  /** The same, and no brake goes on earlier only for the next brake to be enough. */
  public static Assignment notLeavingNextBrake(Assignment a) {
    Policy policy = a.policy();
    Practice practice = policy.practice();
    CorrectionPractice late = Changed.in(practice.correction(), "leavesNextBrake", false);
    return Changed.in(
        a, "policy", Changed.in(policy, "practice", Changed.in(practice, "correction", late)));
  }

  /** A short level line whose last places lean so far to the safe side. */
  public static Assignment leaning(SafeSide safe) {
    return LineOfOwn.of(0, 15, List.of(), with(Mill.policy().adhesion(), safe));
  }

  static Policy isolated(double share) {
    SafeSide s = Mill.policy().safeSide();
    return with(
        Mill.policy().adhesion(), new SafeSide(s.load(), s.overspeed(), s.brakeFactor(), share));
  }

  static Policy with(List<AdhesionCase> cases, SafeSide safeSide) {
    return Changed.in(Changed.in(Mill.policy(), "adhesion", cases), "safeSide", safeSide);
  }

  private MadeUp() {}
}
