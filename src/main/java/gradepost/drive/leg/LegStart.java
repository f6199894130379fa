package gradepost.drive.leg;

import gradepost.drive.brake.RunStates;
import gradepost.motion.Snapshot;

/**
 * Where the leg stands at the start of a piece.
 *
 * @param seen speeds since the last handle movement, which may lie in the piece before
 * @param goesOn whether nothing was braked for in the piece before
 * @param whole whether the next piece goes up to a braking, however far
 */
record LegStart(
    Snapshot state,
    double capMps,
    double capUntilM,
    RunStates line,
    int next,
    SpeedsSeen seen,
    boolean goesOn,
    boolean whole) {

  /** The same, with a target further on as the first that is looked at. */
  LegStart towards(int later) {
    return new LegStart(state, capMps, capUntilM, line, later, seen, goesOn, true);
  }
}
