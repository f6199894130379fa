/**
 * What differs between two issues, as a value.
 *
 * <p>In: two plans for the same run, before and after. Out: a {@link gradepost.reissue.Comparison}:
 * restrictions, permissible speeds and approaches that changed. Approaches are compared as they are
 * told ({@link gradepost.told.InstructionSheet}), so that equal is equal on paper: what differs by
 * less than a printed step is no change.
 *
 * <p>Not promised: a sensible answer for two different runs, or for a route whose sections were
 * measured again.
 */
@NullMarked
package gradepost.reissue;

import org.jspecify.annotations.NullMarked;
