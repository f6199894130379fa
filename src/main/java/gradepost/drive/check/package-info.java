/**
 * Looks at a plan without knowing how it was found.
 *
 * <p>In: instructions, the sheets that a driver is told, or a finished plan. Out: the run that
 * comes of them alone ({@link gradepost.drive.check.InstructionRun}, {@link
 * gradepost.drive.check.PlanVerifier}), and what it came up against: the permissible speed under
 * any part of the train, a stop out of tolerance, a movement that the handles forbid, a gap in the
 * conductor rail, a signal that it cannot stop before. Also the figures that a driver can prove on
 * the way.
 *
 * <p>Not promised: that a plan without findings is the best one.
 */
@NullMarked
package gradepost.drive.check;

import org.jspecify.annotations.NullMarked;
