/**
 * Looks at a plan without knowing how it was found.
 *
 * <p>Comes in: instructions, or a finished plan. Goes out: the run that comes of the instructions
 * alone ({@link gradepost.drive.check.InstructionRun}), and whatever it came up against: the
 * permissible speed under any part of the train, a stop out of tolerance, a movement that the
 * handles forbid, a gap in the conductor rail, a signal that cannot be stood short of. Also the
 * figures that a driver can prove on the way. Not promised: that a plan without findings is the
 * best one.
 */
@NullMarked
package gradepost.drive.check;

import org.jspecify.annotations.NullMarked;
