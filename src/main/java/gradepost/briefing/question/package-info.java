/**
 * Questions about what a briefing teaches.
 *
 * <p>Comes in: a plan as taught, its issue, and a number that chooses. Goes out: papers of equal
 * weight, each question with one right answer and three near wrong ones; the same number gives the
 * same paper. Not promised: that a paper tells a driver who knows the road from one who is lucky; a
 * competent person does that.
 */
@NullMarked
package gradepost.briefing.question;

import org.jspecify.annotations.NullMarked;
