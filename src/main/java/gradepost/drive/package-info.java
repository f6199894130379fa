/**
 * Makes the plan of one assignment.
 *
 * <p>Comes in: an {@link gradepost.task.Assignment}. Goes out: a {@link gradepost.plan.Plan} whose
 * every instruction can be printed, with one approach for each place to brake for and its fallback
 * ladder. The steps stand one above the other: {@code brake} brakes one train for one target,
 * {@code check} runs instructions again, {@code leg} chooses how a leg is driven, {@code fallback}
 * works out what is left when a brake fails; this package puts them in order.
 *
 * <p>Not promised: the least energy, or the shortest time.
 */
@NullMarked
package gradepost.drive;

import org.jspecify.annotations.NullMarked;
