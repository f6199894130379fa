/**
 * Where something is on a route: a lineside place, a stretch, a side, a direction, and the trains
 * for which it stands.
 *
 * <p>In: a mileage as signed and the section whose datum it is counted from. Out: values that name
 * a place and nothing else.
 *
 * <p>Not promised: that the place is on the route, or how far one is from another; only {@link
 * gradepost.route.Path} knows that.
 */
@NullMarked
package gradepost.route.place;

import org.jspecify.annotations.NullMarked;
