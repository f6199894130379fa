/**
 * Draws the charts of a document upon a canvas.
 *
 * <p>Comes in: a chart as a value, and the fonts. Goes out: a {@link
 * gradepost.render.chart.Drawing} of known size that can be drawn on any canvas, lines told apart
 * by more than their grey, names moved so that none hides another. Not promised: that there is room
 * for every name; what does not fit is left out in a fixed order.
 */
@NullMarked
package gradepost.render.chart;

import org.jspecify.annotations.NullMarked;
