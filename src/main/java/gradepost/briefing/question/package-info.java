/**
 * Questions about what a briefing teaches.
 *
 * <p>In: a plan as taught, its issue, and a number that chooses. Out: papers of equal weight, each
 * question with one right answer and three wrong ones that are near it. The same number gives the
 * same paper.
 *
 * <p>Not promised: that a paper tells a driver who knows the road from one who is lucky. A
 * competent person judges that.
 */
@NullMarked
package gradepost.briefing.question;

import org.jspecify.annotations.NullMarked;
