/**
 * Files as the readers see them: names, contents, and the key by which each says of what kind it
 * is.
 *
 * <p>Comes in: a folder on the disk, or inputs that were kept. Goes out: bytes, or why there are
 * none. Names have slashes whatever the machine. Not promised: that two readings of one name give
 * the same bytes; whoever needs that keeps the first.
 */
@NullMarked
package gradepost.source.file;

import org.jspecify.annotations.NullMarked;
