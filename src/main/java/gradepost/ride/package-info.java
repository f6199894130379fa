/**
 * A driven run laid against the plan.
 *
 * <p>In: a plan, the operator's rules, and what was seen or recorded of a run. Out: what was
 * briefed beside what was driven, and a score.
 *
 * <p>Not promised: that the recorder's distances are right; they are taken as they are, from the
 * first standstill on.
 */
@NullMarked
package gradepost.ride;

import org.jspecify.annotations.NullMarked;
