/**
 * A train by its data: vehicles, running resistance, power notches and brakes.
 *
 * <p>In: values as a maker or an operator states them. Out: forces and pressures by one published
 * formula each, with its source and range beside it. Rivals stand side by side behind one
 * interface, and the data choose. Laws that know no vehicle are in {@link gradepost.stock.law}.
 *
 * <p>Not promised: that a formula holds outside its stated range.
 */
@NullMarked
package gradepost.stock;

import org.jspecify.annotations.NullMarked;
