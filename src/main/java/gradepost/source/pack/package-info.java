/**
 * Reads a pack with all that it names, takes notices into its files, and knows where each of its
 * records stands.
 *
 * <p>Comes in: the name of a pack, its files, or a file of notices. Goes out: a {@link
 * gradepost.source.pack.PackFile} in which every name is resolved, or every problem of all its
 * files; or the files as they read with a notice taken in. Not promised: that its trains can be
 * planned.
 */
@NullMarked
package gradepost.source.pack;

import org.jspecify.annotations.NullMarked;
