/**
 * Reads a stock file.
 *
 * <p>In: the tree of the file. Out: a {@link gradepost.stock.Stock}, or problems at their places.
 * The key tables say what may be typed: vehicles, resistance, the power handle by notches or by
 * motors, brakes by their parts, by a usual arrangement or by percentage.
 *
 * <p>Not promised: that the figures are those of the train.
 */
@NullMarked
package gradepost.source.stock;

import org.jspecify.annotations.NullMarked;
