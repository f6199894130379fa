/**
 * Puts a pack together from its parts, and holds what the other papers ask of it.
 *
 * <p>Comes in: plans, the details of the issue, the texts. Goes out: the {@link
 * gradepost.briefing.Briefing}, and by way of {@link gradepost.briefing.compose.BriefingFacts} what
 * one plan's briefing teaches, in its own words. Not promised: that the plan is right; it is
 * printed as it is, with its findings.
 */
@NullMarked
package gradepost.briefing.compose;

import org.jspecify.annotations.NullMarked;
