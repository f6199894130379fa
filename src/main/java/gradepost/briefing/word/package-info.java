/**
 * Words for quantities, tables, actions and reasons, which every page shares.
 *
 * <p>Comes in: printed values, and the texts by key. Goes out: text. No page is known here. Not
 * promised: another language; sentences are joined as English joins them.
 */
@NullMarked
package gradepost.briefing.word;

import org.jspecify.annotations.NullMarked;
