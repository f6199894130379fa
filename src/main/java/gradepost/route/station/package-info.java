/**
 * Where a train calls: stations, their platforms, and the marks at which trains of so many cars
 * stop.
 *
 * <p>In: what a route file says. Out: values by their lineside places. Which one a run calls at is
 * not known here.
 */
@NullMarked
package gradepost.route.station;

import org.jspecify.annotations.NullMarked;
