/**
 * How a leg, from one stand to the next, is driven.
 *
 * <p>Comes in: the train, its targets and the policy's rules. Goes out: instructions for the leg,
 * approach by approach. A dynamic programme over place, speed and handle proposes where power is
 * taken and taken off; a simulation under the rules turns each proposal into instructions that can
 * be printed; the best one that stands when it is run again is kept.
 *
 * <p>Not promised: that no better way of driving exists.
 */
@NullMarked
package gradepost.drive.leg;

import org.jspecify.annotations.NullMarked;
