/**
 * Writes a {@link gradepost.briefing.Briefing} from a plan.
 *
 * <p>Comes in: plans, the details of the issue, the texts. Goes out: the document. Numbers lean to
 * the safe side here and nowhere else: speeds down, places that a driver comes to towards the
 * train, places that he must have passed away from it, gradients steeper, room to spare down, room
 * overrun up. Not promised: that the plan is right; it is printed as it is, with its findings.
 */
@NullMarked
package gradepost.briefing.compose;

import org.jspecify.annotations.NullMarked;
