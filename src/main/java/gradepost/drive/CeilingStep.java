package gradepost.drive;

/**
 * A stretch of one permissible speed for the front of this train: it ends where the rear has
 * cleared.
 *
 * @param cause what sets it ("line", the name of a restriction, a junction, a reference)
 */
public record CeilingStep(double fromM, double toM, double speedMps, String cause) {}
