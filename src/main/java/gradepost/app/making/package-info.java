/**
 * The making of issues that are due.
 *
 * <p>In: packs as they are to be issued, each beside its last issue. Out: what became of each: its
 * papers in the archive and its entry in the register, or why there are none. Who makes them is
 * {@link gradepost.app.making.Making}: the threads of this process, or workers elsewhere.
 *
 * <p>Not promised: files in their places; they are put there when all are made.
 */
@NullMarked
package gradepost.app.making;

import org.jspecify.annotations.NullMarked;
