/**
 * A planned run as a value, in metres, metres a second and pascals: what is done where, each
 * approach with its applications and fallbacks, and what was found.
 *
 * <p>In: what {@code drive} has worked out. Out: a {@link gradepost.plan.Plan}, and by way of
 * {@link gradepost.plan.Telling} the same run as a driver is told it, in printed units. Nothing is
 * searched for here.
 *
 * <p>Not promised: that the numbers of a plan are rounded. What is printed, compared or asked back
 * is taken from {@link gradepost.told}.
 */
@NullMarked
package gradepost.plan;

import org.jspecify.annotations.NullMarked;
