/**
 * What is to be driven: this train, on these lines, calling here, under this policy; its targets,
 * and its permissible speed.
 *
 * <p>In: a route, a type of train, its formation, its calls and a policy. Out: an {@link
 * gradepost.task.Assignment}, the {@link gradepost.task.Ceiling} over the front of the train, and
 * the {@link gradepost.task.Target}s that it has to be braked for, in order of travel. A stop, a
 * lower speed, a step of a terminal platform and a signal at danger are four cases, and none stands
 * in for another.
 *
 * <p>A run with a brake that is not whole is an assignment with other brakes, another policy and a
 * lower speed; {@link gradepost.task.DegradedRun} makes it and says what permits it.
 *
 * <p>Not promised: that the train can be braked for them.
 */
@NullMarked
package gradepost.task;

import org.jspecify.annotations.NullMarked;
