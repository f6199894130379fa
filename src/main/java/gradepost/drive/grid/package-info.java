/**
 * The coarse model of a leg: where power is wanted and up to which speed, by the least cost over a
 * grid of places and speeds; and what it shares with the exact one, the policy's rules of driving
 * as places and speeds of one run.
 *
 * <p>In: the train, the targets of a leg, the permissible speed and prices of time and of a
 * movement. Out: a {@link gradepost.drive.grid.ControlProfile}, which is a proposal: nothing that
 * is printed comes from it. The note of {@link gradepost.drive.leg} is the design of the whole
 * search.
 */
@NullMarked
package gradepost.drive.grid;

import org.jspecify.annotations.NullMarked;
