/**
 * What is left when a brake fails or gives less than it should, and how far runs scatter when
 * nobody corrects them.
 *
 * <p>In: an approach as planned. Out: the last place for each brake in each state of the rail, what
 * a brake applied late leads to, and the spread of uncorrected runs. Each spread is drawn by target
 * and place, so that another issue does not change what it does not touch. Last places lean to the
 * safe side.
 *
 * <p>Not promised: a place for every brake; where there is none the reason is given. The spread is
 * no forecast of how drivers drive.
 */
@NullMarked
package gradepost.drive.fallback;

import org.jspecify.annotations.NullMarked;
