/**
 * What differs between two issues, as a value.
 *
 * <p>In come two plans for the same run, before and after; out goes a {@link
 * gradepost.reissue.Comparison}: restrictions, permissible speeds and approaches that changed.
 * Equal plans give no change, and what only differs below the grain of print gives none. Not
 * promised: a sensible answer for two different runs, or for a route whose sections were measured
 * again.
 */
@NullMarked
package gradepost.reissue;

import org.jspecify.annotations.NullMarked;
