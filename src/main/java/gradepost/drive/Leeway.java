package gradepost.drive;

import gradepost.route.Path;

/**
 * Whether what a brake leaves, asked for late, is worth an emergency application, in which people
 * fall: not while the train still stands within the platform, short of the next stop signal and
 * with the policy's margin before buffer stops; nor where it passes a board no faster over its
 * speed than the overspeed that the figures count in already (common practice: emergency is for
 * danger).
 */
public final class Leeway {
  private final Assignment assignment;

  public Leeway(Assignment assignment) {
    this.assignment = assignment;
  }

  /** Whether the brake holds, or comes so near to it that no other one is needed. */
  public boolean bears(Target target, FailureAnswer answer) {
    if (answer.holds()) {
      return true;
    }
    if (target instanceof Target.Stop stop) {
      return -answer.shortM() < roomM(stop);
    }
    double over = assignment.policy().safeSide().overspeed().metresPerSecond();
    return answer.speedAtTargetMps() <= target.speedMps() + over + 1e-6;
  }

  /** From the stop mark to what may not be run past. */
  public double roomM(Target.Stop stop) {
    double margin = assignment.policy().margins().beforeBuffers().metres();
    double end = stop.buffersM().map(b -> b - margin).orElse(stop.platformEndM());
    Path path = assignment.path();
    double signal =
        assignment.route().signals().stream()
            .filter(s -> s.direction() == assignment.direction())
            .filter(s -> s.line().isEmpty() || assignment.lines().contains(s.line()))
            .filter(s -> s.kind().stops())
            .mapToDouble(s -> path.metresAt(s.location()))
            .filter(at -> at > stop.atM())
            .min()
            .orElse(Double.POSITIVE_INFINITY);
    return Math.min(end, signal) - stop.atM();
  }
}
