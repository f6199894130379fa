/**
 * The train on the track: the numeric kernel.
 *
 * <p>Of the brake: a demand answers after the dead time of its system. Where it runs along the
 * pipe, each vehicle answers later by the time that the application takes from the front of the
 * train to its valve. The valve is in the middle of the vehicle, or where the data say; as a
 * vehicle may stand either way round, the farther of both places counts, so that a latest place is
 * early and never late.
 *
 * <p>Of the mass: a force has to slow the mass under the load and that of the rotating parts, which
 * is the same under every load.
 *
 * <p>In come a path, a formation and its brakes; out goes where the train is and how fast. Plain
 * doubles, the unit in the name; nothing is allocated in the inner loop. A {@link
 * gradepost.motion.Stepper} is confined to one thread. Nothing here knows what a driver is told:
 * that is {@code drive}'s.
 */
@NullMarked
package gradepost.motion;

import org.jspecify.annotations.NullMarked;
