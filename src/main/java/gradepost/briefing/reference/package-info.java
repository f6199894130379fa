/**
 * The reference of a pack, composed from its papers.
 *
 * <p>In: all papers of a pack, each with its plan. Out: a {@link gradepost.briefing.Reference} in
 * which what is the same on several papers stands once; what is not says for which train, direction
 * or paper it is.
 *
 * <p>The idea: a paper knows nothing of the others. What each of them has to be looked up is laid
 * side by side and merged as it is printed ({@link gradepost.briefing.reference.Merged}): texts
 * that are equal are one text, and a difference in a single cell is told in that cell. So nothing
 * can be lost, and nothing stands twice.
 */
@NullMarked
package gradepost.briefing.reference;

import org.jspecify.annotations.NullMarked;
