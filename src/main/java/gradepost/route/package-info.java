/**
 * A line by what stands and lies beside it, for both directions.
 *
 * <p>Comes in: each element with its lineside place. Goes out: the route as one value and, by way
 * of {@link gradepost.route.Path} alone, distance run in one direction. Not promised: that the
 * elements agree with one another; whoever reads or builds a route checks that. Restrictions made
 * known by notice are not part of a route: they come with a pack.
 */
@NullMarked
package gradepost.route;

import org.jspecify.annotations.NullMarked;
