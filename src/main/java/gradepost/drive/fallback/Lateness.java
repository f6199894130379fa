package gradepost.drive.fallback;

import gradepost.motion.Track;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Target;

/** What is late at a target, and where nothing may be. */
final class Lateness {
  private final Assignment assignment;
  private final Track track;
  private final Ceiling ceiling;

  Lateness(Assignment assignment, Track track, Ceiling ceiling) {
    this.assignment = assignment;
    this.track = track;
    this.ceiling = ceiling;
  }

  /**
   * How far past its target a run may end, m: at a stop the tolerance with which it is planned, on
   * the other side of the mark; before buffer stops the room up to them; at a board nothing.
   */
  double allowedM(Target target) {
    return target.match(
        stop ->
            stop.buffersM()
                .map(b -> b - stop.atM())
                .orElse(assignment.policy().margins().stopTolerance().metres()),
        lower -> 0.0,
        step -> 0.0,
        signal -> assignment.policy().margins().beforeSignal().metres());
  }

  /** Whether a run is late that ends so far short of its target, negative past it. */
  boolean late(Target target, double shortM) {
    double beyondM = -shortM - allowedM(target);
    return beyondM > 0 || (beyondM == 0 && target.standsThere() && noneMayBe(target));
  }

  /**
   * Whether not one run may be late: before buffer stops, a signal, or a lower speed along which a
   * check rail guides the wheels.
   */
  boolean noneMayBe(Target target) {
    return target.match(
        stop -> stop.terminal(), lower -> checkRailed(lower), step -> false, signal -> true);
  }

  /** From the board to where the permissible speed rises again. */
  private boolean checkRailed(Target.Reduction lower) {
    double toM =
        ceiling.steps().stream()
            .filter(s -> s.fromM() > lower.atM() && s.speedMps() > lower.speedMps())
            .mapToDouble(CeilingStep::fromM)
            .findFirst()
            .orElse(assignment.path().lengthM());
    return track.curves().stream()
        .anyMatch(c -> c.checkRailed() && c.fromM() < toM && c.toM() > lower.atM());
  }
}
