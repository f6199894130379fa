/**
 * The papers by which a driver is assessed and signed off, and the report on an assessed ride.
 *
 * <p>In: a plan as taught, the briefing that teaches it, and the operator's rules. Out: documents
 * as values, each with the issue that it belongs to.
 *
 * <p>Not promised: that a signature is due. A competent person decides whether a driver knows the
 * road.
 */
@NullMarked
package gradepost.briefing.signoff;

import org.jspecify.annotations.NullMarked;
