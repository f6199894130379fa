/**
 * Makes the papers of one issue of one pack: plan, compose, lay out.
 *
 * <p>In: a pack that has been read, and the issue before it where there is one. Out: papers as
 * bytes, or why there are none. What is different from the issue before is worked out once ({@link
 * gradepost.app.issue.DifferenceFinder}); papers, bars, register and report are made from that. The
 * result depends on these inputs alone, so that an issue can be made again from the archive.
 *
 * <p>Not promised: that the papers lie in their place; the caller puts them there.
 */
@NullMarked
package gradepost.app.issue;

import org.jspecify.annotations.NullMarked;
