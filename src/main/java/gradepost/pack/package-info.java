/**
 * What a depot issues papers for: the details of an issue, the kinds of paper, the risks of a
 * formation, the notices, pictures of what stands by the line, and when two names are one person's.
 *
 * <p>In: values that have been read and checked. Out: the same values, for those who plan, compare
 * or print. A pack with the files that it was read from is {@code source.pack}'s.
 *
 * <p>Not promised: that a notice fits the route; the readers check that.
 */
@NullMarked
package gradepost.pack;

import org.jspecify.annotations.NullMarked;
