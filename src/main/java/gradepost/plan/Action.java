package gradepost.plan;

/**
 * One instruction and what the train does when it is carried out.
 *
 * @param approach number of the approach that it belongs to (1-based), the next target ahead
 * @param atM distance run of the front, metres
 * @param speedMps speed there
 * @param timeS seconds from the start of the run (standing time left out)
 */
public record Action(
    int approach, Trigger trigger, Command command, double atM, double speedMps, double timeS) {}
