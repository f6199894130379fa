/**
 * Laws of adhesion, of the friction of brake blocks, and of curve resistance: one published form,
 * one class.
 *
 * <p>In: the figures that a law leaves open, and a speed or a radius. Out: a share, or a force for
 * each unit of weight. A law knows no vehicle and no train. A speed or radius outside the range of
 * a law is refused where the law has a range.
 *
 * <p>Not promised: that the law which the data name is the right one for the train.
 */
@NullMarked
package gradepost.stock.law;

import org.jspecify.annotations.NullMarked;
