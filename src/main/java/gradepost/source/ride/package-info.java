/**
 * Reads what was observed of a ride: an assessor's lines, or the export of a recorder.
 *
 * <p>In: a table and the plan that the ride is laid against. Out: a {@link gradepost.ride.Ride}, or
 * problems at their places.
 *
 * <p>Not promised: that the recorder was right.
 */
@NullMarked
package gradepost.source.ride;

import org.jspecify.annotations.NullMarked;
