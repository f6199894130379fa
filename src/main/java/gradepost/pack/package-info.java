/**
 * What a depot issues papers for: the details of an issue, the kinds of paper, the risks of a
 * formation, and the notices.
 *
 * <p>Comes in: values that have been read and checked. Goes out: the same values, for whoever
 * plans, compares or prints. Not promised: that a notice fits the route; the readers check that.
 * The pack itself, with the files that it was read from, is still a value of {@code source.pack}.
 */
@NullMarked
package gradepost.pack;

import org.jspecify.annotations.NullMarked;
