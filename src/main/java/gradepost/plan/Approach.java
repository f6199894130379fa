package gradepost.plan;

import gradepost.task.Target;
import java.util.List;
import java.util.Optional;

/**
 * One target and everything about coming to it.
 *
 * @param number 1-based, in order of travel
 * @param fromM where its page begins: the end of the approach before
 * @param shutOffM where power is taken off for the first application; empty where the train was
 *     coasting already
 * @param brakingSpeedMps planned speed at the first braking point; without a brake, where the
 *     target is met
 * @param endM where the planned run meets the target (a stop: where it stands)
 * @param actions in order
 * @param applications of the brake, in order; empty when the train needs none
 * @param ifFaster what a faster train has to do where the planned one needs no brake; empty where
 *     it does, and where the brake for a further target is on before this one
 */
public record Approach(
    int number,
    Target.OfApproach target,
    double fromM,
    Optional<Double> shutOffM,
    double brakingSpeedMps,
    double endM,
    List<Action> actions,
    List<Application> applications,
    Optional<IfFaster> ifFaster,
    Optional<Spread> spread,
    List<Finding> findings) {
  /** A train that is no further from the end of a stop than this stands there, m. */
  private static final double AT_STOP_M = 25;

  /**
   * Where a stand is told, m: at the mark, since what a train stands short of it, within the
   * policy's tolerance, no driver aims at; the place itself where no stop is.
   *
   * @param all approaches of the run
   * @param atM where the front stands, distance run
   */
  public static double standM(List<Approach> all, double atM) {
    return all.stream()
        .filter(a -> a.target().isStop() && Math.abs(a.endM() - atM) < AT_STOP_M)
        .mapToDouble(a -> a.target().atM())
        .findFirst()
        .orElse(atM);
  }

  /** The application of a faster train, where the planned one needs none. */
  public Optional<Application> faster() {
    return ifFaster.flatMap(IfFaster::application);
  }

  public Approach {
    actions = List.copyOf(actions);
    applications = List.copyOf(applications);
    findings = List.copyOf(findings);
  }

  /** The one that a driver has to find: where the brake goes on first. */
  public Optional<Application> first() {
    return applications.stream().findFirst();
  }

  /** The printed point of the first application; empty when the train needs no brake. */
  public Optional<Double> brakingPointM() {
    return first().map(Application::brakingPointM);
  }
}
