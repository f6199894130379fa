/**
 * The use cases, each short enough to be the picture of its flow.
 *
 * <p>Comes in: names of files and folders. Goes out: papers in their place, or every problem that
 * kept them back. The command line only turns words into calls of this package and its answers into
 * words. Not promised: that runs into one folder at once are kept apart, but for reissues, which a
 * lock keeps apart.
 */
@NullMarked
package gradepost.app;

import org.jspecify.annotations.NullMarked;
