/**
 * What goes out beside a new issue: the addendum, the page of changes, the bars beside changed
 * lines, the slips; and which sheets have changed.
 *
 * <p>Comes in: the document before and after, and what differs between the plans. Goes out: papers
 * as values, and for each sheet one text that is the same exactly where the sheet need not be
 * exchanged. Not promised: that a change is small because its text is short.
 */
@NullMarked
package gradepost.briefing.reissue;

import org.jspecify.annotations.NullMarked;
