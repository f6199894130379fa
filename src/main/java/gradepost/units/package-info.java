/**
 * Quantities: what they are, how they are read and how they are written.
 *
 * <p>In: numbers with their unit, or texts that a person typed. Out: values that cannot be mistaken
 * for one another, and texts in miles or in kilometres. Each is kept in SI.
 *
 * <p>Not promised: that a rounded text reads back as the value that it was made from; the caller
 * says to which side it leans.
 */
@NullMarked
package gradepost.units;

import org.jspecify.annotations.NullMarked;
