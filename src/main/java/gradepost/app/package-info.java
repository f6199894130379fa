/**
 * The use cases, each short enough to be the picture of its flow.
 *
 * <p>In: names of files and folders. Out: papers in their place, or every problem that kept them
 * back. What the flows share stands beside: {@code store} keeps files, {@code export} writes for
 * other programs, {@code issue} makes the papers of one issue, {@code reissue} is the way of a
 * notice. The command line only turns words into calls of this package, and its answers into words.
 *
 * <p>Not promised: that runs into one folder at once are kept apart, but for reissues, which a lock
 * keeps apart.
 */
@NullMarked
package gradepost.app;

import org.jspecify.annotations.NullMarked;
