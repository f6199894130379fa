/**
 * The use cases, each short enough to be the picture of its flow.
 *
 * <p>In come names of files and folders; out go papers in their place, or every problem that kept
 * them back. The two faces of the program only turn words into calls of this package and its
 * answers into words. Reissues keep out of each other's way by a lock; other runs into one folder
 * at once are not kept apart.
 */
@NullMarked
package gradepost.app;

import org.jspecify.annotations.NullMarked;
