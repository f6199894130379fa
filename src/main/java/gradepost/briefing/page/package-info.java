/**
 * The page of an approach and the page about the train.
 *
 * <p>Comes in: an approach of a plan with its fallbacks, or the train and its figures. Goes out:
 * the page as a value. What to do when a brake gives nothing stands on the page of the braking that
 * it belongs to. Not promised: that an approach fits one sheet.
 */
@NullMarked
package gradepost.briefing.page;

import org.jspecify.annotations.NullMarked;
