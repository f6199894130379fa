/**
 * The page of an approach and the page about the train.
 *
 * <p>In: an approach of a plan with its {@link gradepost.told.InstructionSheet}, or the train and
 * its figures. Out: the page as a value. What to do when a brake fails stands on the page of the
 * braking that it belongs to. A writer here only spells what is told.
 *
 * <p>Not promised: that an approach fits one sheet.
 */
@NullMarked
package gradepost.briefing.page;

import org.jspecify.annotations.NullMarked;
