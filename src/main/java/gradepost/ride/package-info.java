/**
 * A driven run laid against the plan.
 *
 * <p>In: a plan, the operator's rules, and what was seen or recorded of a run. Out: what was
 * briefed beside what was driven, and a score.
 *
 * <p>A recorder counts by a wheel. {@link gradepost.ride.Tying} lays every stand at a stop on its
 * mark and stretches what lies between; each value is carried with how far it may be wrong, and a
 * fault is one only where it is certain.
 *
 * <p>Not promised: how a train stood at its marks, which no recorder knows; that comes from whoever
 * saw it.
 */
@NullMarked
package gradepost.ride;

import org.jspecify.annotations.NullMarked;
