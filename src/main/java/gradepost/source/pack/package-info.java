/**
 * Reads a pack with all that it names, takes notices into its files, and knows where each of its
 * records stands.
 *
 * <p>In: the name of a pack, its files, or a file of notices. Out: a {@link
 * gradepost.source.pack.PackFile} in which every name is resolved, or every problem of all its
 * files; or the files as they read with a notice taken in. A file is altered only where it must
 * change; the result is read again before it is used.
 *
 * <p>Not promised: that its trains can be planned.
 */
@NullMarked
package gradepost.source.pack;

import org.jspecify.annotations.NullMarked;
