/**
 * Puts a pack together from its parts, and holds what the other papers take from it.
 *
 * <p>In: plans, the details of the issue, the texts. Out: the {@link gradepost.briefing.Briefing},
 * and what one plan's briefing teaches, in its own words ({@link
 * gradepost.briefing.compose.BriefingFacts}), for papers that ask it again.
 *
 * <p>Not promised: that the plan is right; it is printed as it is, with its findings.
 */
@NullMarked
package gradepost.briefing.compose;

import org.jspecify.annotations.NullMarked;
