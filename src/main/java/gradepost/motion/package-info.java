/**
 * The train on the track: the numeric kernel.
 *
 * <p>In: a path, a formation and its brakes, as plain doubles with the unit in the name. Out: where
 * the train is and how fast, at every event that was asked for. The equation of motion is
 * integrated by an embedded pair of Runge-Kutta formulas with error control ({@link
 * gradepost.motion.DormandPrince54}); a step ends at every corner of the forces. Gradient and curve
 * are felt over the whole length of the train. Nothing is allocated in the inner loop. A {@link
 * gradepost.motion.Stepper} is confined to one thread.
 *
 * <p>Of the brake: a demand answers after the dead time of its system. Where it runs along the
 * pipe, each vehicle answers later by the time that the application takes from the front of the
 * train to its valve. The valve is in the middle of the vehicle, or where the data say. As a
 * vehicle may stand either way round, the farther of both places counts: a latest place is early
 * and never late.
 *
 * <p>Of the mass: a force has to slow the mass under the load and that of the rotating parts, which
 * is the same under every load.
 *
 * <p>Not promised: forces between vehicles; the train is one body with its masses spread. Nothing
 * here knows what a driver is told.
 */
@NullMarked
package gradepost.motion;

import org.jspecify.annotations.NullMarked;
