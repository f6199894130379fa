/**
 * Draws the charts of a document on a canvas.
 *
 * <p>In: a chart as a value, and the fonts. Out: a {@link gradepost.render.chart.Drawing} of known
 * size that can be drawn on any canvas. Lines are told apart by more than their grey. Names are
 * moved so that none hides another.
 *
 * <p>Not promised: that there is room for every name; what does not fit is left out in a fixed
 * order.
 */
@NullMarked
package gradepost.render.chart;

import org.jspecify.annotations.NullMarked;
