/**
 * Quantities: what they are, how they are read and how they are written.
 *
 * <p>In come numbers with their unit, or texts that a person typed; out go values that cannot be
 * mistaken for one another, and texts in one of the two worlds of units. Each is kept in SI. Not
 * promised: that a rounded text reads back as the value that it was made from; the caller says to
 * which side it leans.
 */
@NullMarked
package gradepost.units;

import org.jspecify.annotations.NullMarked;
