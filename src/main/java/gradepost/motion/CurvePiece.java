package gradepost.motion;

/** A curve on the resolved track, by distance run. */
public record CurvePiece(double fromM, double toM, double radiusM, boolean checkRailed) {}
