/**
 * What is drawn in a document, as values: curves, places and names, without a size or a pen.
 *
 * <p>In: numbers of a plan in the units of its axes, places in metres run. Out: a sealed family
 * that whoever draws answers in full. Each chart says in words what it shows.
 */
@NullMarked
package gradepost.briefing.chart;

import org.jspecify.annotations.NullMarked;
