package gradepost.plan.fallback;

import gradepost.route.Path;
import gradepost.route.Signal;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Whether what a brake leaves, asked for late, is worth an emergency application, in which people
 * fall: not while the train still stands within the platform, short of the next stop signal and
 * with the policy's margin before buffer stops; nor where it passes a board no faster over its
 * speed than the overspeed that the figures count in already (common practice: emergency is for
 * danger). Nothing is concluded from what is not supplied.
 */
public final class OverrunAllowance {
  private final Assignment assignment;

  public OverrunAllowance(Assignment assignment) {
    this.assignment = assignment;
  }

  /** Whether the brake holds, or comes so near to it that no other one is needed. */
  public boolean bears(Target target, FailureAnswer answer) {
    if (answer.holds()) {
      return true;
    }
    Optional<Double> shortM = answer.met().endsShortM();
    if (shortM.isEmpty()) {
      return false;
    }
    double over = assignment.policy().safeSide().overspeed().metresPerSecond();
    boolean hardlyFaster = answer.speedAtTargetMps() <= target.speedMps() + over + 1e-6;
    return target.match(
        stop -> knowsWhatFollows(stop) && -shortM.get() < roomM(stop),
        lower -> hardlyFaster,
        step -> hardlyFaster,
        signal -> false);
  }

  /**
   * Whether the data would name a signal behind the mark. A route without any stop signal on this
   * path says nothing of signals; where the track ends at the platform there is none.
   */
  public boolean knowsWhatFollows(Target.Stop stop) {
    return stop.terminal() || stopSignals().findAny().isPresent();
  }

  /** Whether it stands within the platform, and only a signal that is not supplied can matter. */
  public boolean withinUnknownRoom(Target target, FailureAnswer answer) {
    return !answer.holds()
        && target
            .stop()
            .filter(stop -> !knowsWhatFollows(stop))
            .filter(stop -> answer.met().endsShortM().filter(m -> -m < roomM(stop)).isPresent())
            .isPresent();
  }

  /** The next stop signal behind the mark; empty where the data name none. */
  public Optional<Double> nextSignalM(Target.Stop stop) {
    Path path = assignment.path();
    return stopSignals()
        .map(s -> path.metresAt(s.location()))
        .filter(at -> at > stop.atM())
        .min(Comparator.naturalOrder());
  }

  private Stream<Signal> stopSignals() {
    return assignment.route().signals().stream()
        .filter(s -> s.direction() == assignment.direction())
        .filter(s -> s.line().isEmpty() || assignment.lines().contains(s.line()))
        .filter(s -> s.kind().stops());
  }

  /** From the stop mark to the nearest known limit that may not be passed. */
  public double roomM(Target.Stop stop) {
    double margin = assignment.policy().margins().beforeBuffers().metres();
    double end = stop.buffersM().map(b -> b - margin).orElse(stop.platformEndM());
    return Math.min(end, nextSignalM(stop).orElse(end)) - stop.atM();
  }
}
