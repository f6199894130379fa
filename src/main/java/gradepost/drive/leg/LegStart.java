package gradepost.drive.leg;

import gradepost.motion.Snapshot;

/**
 * Where the leg stands at the start of a piece.
 *
 * @param seen speeds since the last handle movement, which may lie in the piece before
 */
record LegStart(
    Snapshot state, double capMps, double capUntilM, RunStates line, int next, SpeedsSeen seen) {

  /** The same, with a target further on as the first that is looked at. */
  LegStart towards(int later) {
    return new LegStart(state, capMps, capUntilM, line, later, seen);
  }
}
