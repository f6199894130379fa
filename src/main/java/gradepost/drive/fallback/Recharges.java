package gradepost.drive.fallback;

import gradepost.drive.brake.Slack;
import gradepost.plan.Action;
import gradepost.plan.Finding;
import gradepost.plan.Run;
import gradepost.plan.Trace;
import gradepost.stock.BrakeSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where a brake that only releases fully is full again after each release of a planned run. */
public final class Recharges {

  /**
   * A release after which the reservoirs are full again before anything brakes.
   *
   * @param approach number of the one whose sheet tells the release
   */
  public record Full(int approach, Finding.FullAgain what) {}

  /**
   * All of a run, in order. Where the next application comes sooner nothing is said here: how much
   * less the brake then has is said there.
   *
   * @param refillS how long the reservoirs take to fill after each release, in order
   */
  public static List<Full> of(
      BrakeSystem service, List<Action> actions, List<Double> refillS, Trace trace) {
    List<Full> out = new ArrayList<>();
    int next = 0;
    for (int i = 0; i < actions.size(); i++) {
      Action released = actions.get(i);
      if (!released.command().isRelease()) {
        continue;
      }
      double forS = refillS.get(next++);
      double fullS = released.timeS() + forS;
      if (forS > 0 && !brakesBefore(actions.subList(i, actions.size()), fullS)) {
        at(trace, fullS)
            .map(m -> new Finding.FullAgain(service, released.atM(), forS, m))
            .ifPresent(f -> out.add(new Full(released.approach(), f)));
      }
    }
    return List.copyOf(out);
  }

  private static boolean brakesBefore(List<Action> later, double timeS) {
    return later.stream().anyMatch(a -> a.command().isBrake() && a.timeS() < timeS - Slack.TIME_S);
  }

  /** Empty where the run is over by then. */
  private static Optional<Double> at(Trace trace, double timeS) {
    double lastS = trace.points().get(trace.points().size() - 1).timeS();
    return timeS > lastS ? Optional.empty() : Optional.of(new Run(trace).placeAt(timeS));
  }

  private Recharges() {}
}
