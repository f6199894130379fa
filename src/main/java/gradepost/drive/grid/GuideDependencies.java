package gradepost.drive.grid;

import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;

/**
 * What one stage of working out a leg has asked of its guide. Under another guide that gives the
 * same answers it comes out the same, and need not be worked out again.
 */
public final class GuideDependencies {
  private double toM = Double.NEGATIVE_INFINITY;
  private final List<Target> releases = new ArrayList<>();

  /** It was asked what to do all along the way up to a place. */
  public void upTo(double atM) {
    toM = Math.max(toM, atM);
  }

  /** It was asked at what speed the brake comes off before a target. */
  public void release(Target target) {
    releases.add(target);
  }

  /** Whether both guides give the same answers to all that was asked. */
  public boolean sameOf(ControlProfile one, ControlProfile other) {
    return toM < one.sameUpToM(other)
        && releases.stream()
            .allMatch(t -> one.releaseBefore(t.atM()).equals(other.releaseBefore(t.atM())));
  }
}
