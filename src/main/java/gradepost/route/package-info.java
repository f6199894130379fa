/**
 * A line by what stands and lies beside it, for both directions.
 *
 * <p>In: each element with its lineside place. Out: the route as one value and, by way of {@link
 * gradepost.route.Path} alone, distance run in one direction. A place is what is signed at the
 * lineside; a distance exists only along a path, so that the two cannot be mixed up.
 *
 * <p>Not promised: that the elements agree with one another; the readers check that. Restrictions
 * made known by notice are not part of a route: they come with a pack.
 */
@NullMarked
package gradepost.route;

import org.jspecify.annotations.NullMarked;
