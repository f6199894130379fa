/**
 * Reads a route file: track, speeds, stations, and what stands by the line.
 *
 * <p>In: the tree of the file. Out: a {@link gradepost.route.Route}, or problems at their places.
 * {@link gradepost.source.route.RouteFrame} is what has to be known of a route before a place on it
 * can be read; notices and packs are read by it too.
 *
 * <p>Not promised: that the elements make sense together beyond the checks here; {@code
 * route.audit} doubts more.
 */
@NullMarked
package gradepost.source.route;

import org.jspecify.annotations.NullMarked;
