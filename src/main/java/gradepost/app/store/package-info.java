/**
 * Files, the archive and the lock, and the answer of a command.
 *
 * <p>In: bytes and names. Out: files that are moved into place only when all of them are written;
 * kept files by the digest of their content; an {@link gradepost.app.store.Answer}.
 *
 * <p>Not promised: anything about what is in a file.
 */
@NullMarked
package gradepost.app.store;

import org.jspecify.annotations.NullMarked;
