/**
 * What is to be driven: this train, on these lines, calling here, under this policy; its targets,
 * and its permissible speed.
 *
 * <p>Comes in: a route, a type of train, its formation, its calls and a policy. Goes out: an {@link
 * gradepost.task.Assignment}, the {@link gradepost.task.Ceiling} over the front of the train, and
 * the {@link gradepost.task.Target}s that it has to be braked for, in order of travel. Not
 * promised: that the train can be braked for them.
 */
@NullMarked
package gradepost.task;

import org.jspecify.annotations.NullMarked;
