/**
 * Files as the readers see them: names, contents, and the key by which each says of what kind it
 * is.
 *
 * <p>In: a folder on the disk, or inputs that were kept. Out: bytes, or why there are none. Names
 * have slashes on every machine.
 *
 * <p>Not promised: that two readings of one name give the same bytes; a caller that needs that
 * keeps the first.
 */
@NullMarked
package gradepost.source.file;

import org.jspecify.annotations.NullMarked;
