/**
 * Makes the papers of one issue of one pack: plan, compose, lay out.
 *
 * <p>Comes in: a pack that has been read, and the issue before it where there is one. Goes out:
 * papers as bytes, or why there are none. The result hangs on these inputs alone. Not promised:
 * that the papers lie in their place; whoever asked puts them there.
 */
@NullMarked
package gradepost.app.issue;

import org.jspecify.annotations.NullMarked;
