/**
 * How one train is braked for one target: pressures that can be asked for, the braking as the
 * policy wants it, its curve, and the last place for it.
 *
 * <p>Comes in: the train as planned and on the safe side ({@link
 * gradepost.drive.brake.TrainModels}), a target, the policy's technique. Goes out: a braking whose
 * every number can be printed, and where it has to begin. Not promised: that there is such a place;
 * a search that reached its limit says so and gives no distance.
 */
@NullMarked
package gradepost.drive.brake;

import org.jspecify.annotations.NullMarked;
