/**
 * Makes the plan of one assignment.
 *
 * <p>In: an {@link gradepost.task.Assignment}. Out: a {@link gradepost.plan.Plan} in which every
 * instruction can be printed, with one approach for each place to brake for, and its fallbacks. The
 * steps stand one above the other: {@code brake} brakes one train for one target, {@code check}
 * runs instructions again, {@code leg} chooses how a leg is driven, {@code fallback} works out what
 * is left when a brake fails. This package puts them in order, adds cues and findings, and has the
 * result driven again from its sheets alone.
 *
 * <p>Not promised: the least energy, or the shortest time. A plan that breaks a rule comes back
 * with its failures; the caller must not issue it.
 */
@NullMarked
package gradepost.drive;

import org.jspecify.annotations.NullMarked;
