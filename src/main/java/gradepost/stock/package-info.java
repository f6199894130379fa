/**
 * A train by its data: vehicles, running and curve resistance, power notches, brakes, friction.
 *
 * <p>In come values as a maker or an operator states them; out go the forces and pressures of one
 * published formula each, with its source and range beside it. Rivals stand side by side behind one
 * interface, and the data choose. Not promised: that a formula holds outside its stated range.
 */
@NullMarked
package gradepost.stock;

import org.jspecify.annotations.NullMarked;
