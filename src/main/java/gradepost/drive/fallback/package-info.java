/**
 * What is left when a brake gives nothing or less than it should, and how far runs scatter when
 * nobody corrects them.
 *
 * <p>Comes in: an approach as planned. Goes out: the last place for each brake in each state of the
 * rail, what comes of a brake asked for late, and the spread of uncorrected runs. Latest places
 * lean to the safe side. Not promised: a place for every brake; where there is none the reason is
 * given.
 */
@NullMarked
package gradepost.drive.fallback;

import org.jspecify.annotations.NullMarked;
