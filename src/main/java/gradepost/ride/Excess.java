package gradepost.ride;

/**
 * Some part of the train was over the permissible speed.
 *
 * @param fromM where it began, distance run of the front
 * @param toM where it ended
 * @param atS when it began, seconds since the start
 * @param lastsS how long it lasted
 * @param mostMps the most by which it was over
 * @param limitMps the permissible speed where it was
 * @param cause what sets that speed
 * @param countsS how long without a break it was over by as much as counts
 */
public record Excess(
    double fromM,
    double toM,
    double atS,
    double lastsS,
    double mostMps,
    double limitMps,
    String cause,
    double countsS) {}
