/**
 * Reads what was observed of a ride: an assessor's lines, or the export of a recorder.
 *
 * <p>Comes in: a table and the plan that the ride is laid against. Goes out: a {@link
 * gradepost.ride.Ride}, or problems at their places. Not promised: that the recorder was right.
 */
@NullMarked
package gradepost.source.ride;

import org.jspecify.annotations.NullMarked;
