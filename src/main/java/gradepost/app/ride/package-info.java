/**
 * The use cases of a driven run: read, laid on the road, judged, printed.
 *
 * <p>In: a recorder's export or the form, and the pack it was driven by. Out: report and debrief in
 * their place, a list over a class, or every problem that kept them back.
 *
 * <p>Not promised: that a ride recorded with another issue's papers can be judged.
 */
@NullMarked
package gradepost.app.ride;

import org.jspecify.annotations.NullMarked;
