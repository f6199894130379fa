/**
 * Words for quantities, tables, actions and reasons, which every page shares.
 *
 * <p>In: printed values, and the texts by key. Out: text. No page is known here.
 *
 * <p>Not promised: another language; sentences are joined as English joins them.
 */
@NullMarked
package gradepost.briefing.word;

import org.jspecify.annotations.NullMarked;
