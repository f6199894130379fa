package gradepost.drive;

import gradepost.motion.Snapshot;

/** Where the leg stands at the start of a piece. */
record LegStart(Snapshot state, double capMps, double capUntilM, Line line, int next) {}
