/**
 * A line as it lies, by lineside places, for both directions.
 *
 * <p>In come places as signed: a mileage and the section whose datum it is counted from. Out goes,
 * by way of {@link gradepost.route.Path} alone, distance run in one direction. Not promised: that
 * the elements agree with one another; whoever reads or builds a route checks that.
 */
@NullMarked
package gradepost.route;

import org.jspecify.annotations.NullMarked;
