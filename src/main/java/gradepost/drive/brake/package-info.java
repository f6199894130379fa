/**
 * How one train is braked for one target.
 *
 * <p>In: the train as planned and on the safe side ({@link gradepost.drive.brake.TrainModels}), a
 * target, the policy's technique. Out: a braking in which every number can be printed, and where it
 * has to begin. Everyone who wants the last place for a brake asks one search, {@link
 * gradepost.drive.brake.LastPlace}: what begins a metre later ends about a metre later, so it is
 * found from the end back, and never too late.
 *
 * <p>Not promised: that there is such a place. A search that reached its limit says so and gives no
 * distance.
 */
@NullMarked
package gradepost.drive.brake;

import org.jspecify.annotations.NullMarked;
