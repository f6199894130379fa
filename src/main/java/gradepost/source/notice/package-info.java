/**
 * Reads notices, from YAML or CSV, looks at each beside the route and the others, and writes them
 * as they would be typed.
 *
 * <p>In: the tree of a file, or a table. Out: restrictions, or problems at their places; or text
 * that reads again as the same restriction.
 *
 * <p>Not promised: that a notice says what the track needs.
 */
@NullMarked
package gradepost.source.notice;

import org.jspecify.annotations.NullMarked;
