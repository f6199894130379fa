package gradepost.drive.check;

import gradepost.drive.brake.Slack;
import gradepost.drive.grid.RunningTest;
import gradepost.plan.Action;
import gradepost.plan.BrakeTest.NoRoom;
import gradepost.plan.BrakeTest.NoRoom.Reason;
import gradepost.plan.Run;
import gradepost.plan.Trace;
import gradepost.policy.Policy;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Judges whether a run has room for the running brake tests of its way: each is made at its place
 * and near its speed, is over before the brake goes on again, and that no sooner than the policy
 * wants and the brake is full again. Nothing of how the run was found is known here.
 */
public final class TestRoom {
  /** An action so near a place is the one there, m. */
  private static final double THERE_M = 0.01;

  private final InstructionRun run;
  private final double brakeOffS;

  private TestRoom(InstructionRun run, Policy policy) {
    this.run = run;
    this.brakeOffS =
        Math.max(
            policy.practice().brake().offAtLeast().seconds(),
            policy.practice().taught().appliedAgain().seconds());
  }

  /** A test for which a run has no room. */
  public record Missing(RunningTest test, NoRoom why) {}

  /** Those of a run, in the order of the tests. */
  public static List<Missing> missing(InstructionRun run, Policy policy, List<RunningTest> tests) {
    List<Missing> out = new ArrayList<>();
    TestRoom room = new TestRoom(run, policy);
    tests.forEach(t -> room.why(t).ifPresent(why -> out.add(new Missing(t, why))));
    return List.copyOf(out);
  }

  /** Where a test is made in a run, by the index of its application; empty where it is not. */
  public static Optional<Integer> madeAt(List<Action> actions, double atM) {
    for (int i = 0; i < actions.size(); i++) {
      if (actions.get(i).command().testsBrake() && Math.abs(actions.get(i).atM() - atM) < THERE_M) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  private Optional<NoRoom> why(RunningTest test) {
    return madeAt(run.actions(), test.atM())
        .map(i -> why(test, i))
        .orElseGet(() -> Optional.of(notMade(test)));
  }

  private Optional<NoRoom> why(RunningTest test, int applied) {
    List<Action> actions = run.actions();
    Action on = actions.get(applied);
    if (on.speedMps() < test.leastMps() - Slack.SPEED_MPS) {
      return Optional.of(new NoRoom(Reason.SLOW, on.speedMps()));
    }
    if (on.speedMps() > test.mostMps() + Slack.SPEED_MPS) {
      return Optional.of(new NoRoom(Reason.FAST, on.speedMps()));
    }
    int off = applied + 1;
    if (off == actions.size() || !actions.get(off).command().isRelease()) {
      return Optional.of(new NoRoom(Reason.BRAKING, 0));
    }
    Action released = actions.get(off);
    Optional<Action> again =
        actions.subList(off, actions.size()).stream()
            .filter(a -> a.command().isBrake() || a.command().isStand())
            .findFirst();
    if (again.isEmpty()) {
      return Optional.empty();
    }
    double offS = again.get().timeS() - released.timeS();
    long releases = actions.subList(0, off).stream().filter(a -> a.command().isRelease()).count();
    double refillS = run.refillS().get((int) releases);
    if (again.get().command().isBrake() && offS < brakeOffS - Slack.TIME_S) {
      return Optional.of(new NoRoom(Reason.AGAIN, offS));
    }
    return again.get().command().isBrake() && offS < refillS - Slack.TIME_S
        ? Optional.of(new NoRoom(Reason.RECHARGE, refillS))
        : Optional.empty();
  }

  private NoRoom notMade(RunningTest test) {
    List<Action> actions = run.actions();
    Optional<Action> brake =
        actions.stream()
            .filter(a -> a.atM() <= test.atM() + THERE_M)
            .filter(a -> a.command().isBrake() || a.command().isRelease())
            .reduce((a, later) -> later);
    double lastM = actions.isEmpty() ? 0 : actions.get(actions.size() - 1).atM();
    double mps = run.points().isEmpty() ? 0 : new Run(new Trace(run.points())).speedAt(test.atM());
    if (brake.filter(a -> a.command().isBrake()).isPresent()) {
      boolean target = brake.get().command().brakesForTarget();
      return new NoRoom(target ? Reason.BRAKING : Reason.CHECKED, 0);
    }
    if (mps < test.leastMps() || lastM < test.atM()) {
      return new NoRoom(Reason.SLOW, mps);
    }
    return mps > test.mostMps() ? new NoRoom(Reason.FAST, mps) : new NoRoom(Reason.BRAKING, 0);
  }
}
