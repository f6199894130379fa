/**
 * The train on the track: the numeric kernel.
 *
 * <p>In come a path, a formation and its brakes; out goes where the train is and how fast. Plain
 * doubles, the unit in the name; nothing is allocated in the inner loop. A {@link
 * gradepost.motion.Stepper} is confined to one thread. Nothing here knows what a driver is told:
 * that is {@code drive}'s.
 */
@NullMarked
package gradepost.motion;

import org.jspecify.annotations.NullMarked;
