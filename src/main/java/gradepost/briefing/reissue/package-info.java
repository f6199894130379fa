/**
 * What goes out beside a new issue: the addendum, the page of changes, the bars beside changed
 * lines, the slips; and which sheets have changed.
 *
 * <p>In: the document before and after, and what differs between the plans. Out: papers as values,
 * and for each sheet one canonical text. Two sheets have the same text exactly where they are the
 * same on paper. The text holds values and no names of Java, and its format has a number, so that a
 * new version of the program makes no sheet count as changed.
 *
 * <p>Not promised: that a change is small because its text is short.
 */
@NullMarked
package gradepost.briefing.reissue;

import org.jspecify.annotations.NullMarked;
