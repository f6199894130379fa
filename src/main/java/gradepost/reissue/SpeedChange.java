package gradepost.reissue;

/**
 * A stretch over which the permissible speed for the front of this train is not what it was.
 *
 * @param cause what sets the later one
 */
public record SpeedChange(
    double fromM, double toM, double beforeMps, double afterMps, String cause) {}
