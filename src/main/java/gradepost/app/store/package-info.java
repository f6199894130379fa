/**
 * Files, the archive and the lock, and what came of a command.
 *
 * <p>Comes in: bytes and names. Goes out: files moved into their place only when all of them are
 * written; kept files by the digest of their content; an {@link gradepost.app.store.Answer}. Not
 * promised: anything about what is in a file.
 */
@NullMarked
package gradepost.app.store;

import org.jspecify.annotations.NullMarked;
