/**
 * The papers by which a driver is assessed and signed off, and the report on an assessed ride.
 *
 * <p>Comes in: a plan as taught, the briefing that teaches it, and the operator's rules. Goes out:
 * documents as values, each bearing the issue that it belongs to. Not promised: that a signature is
 * due; whether a driver knows the road is for a competent person to say.
 */
@NullMarked
package gradepost.briefing.signoff;

import org.jspecify.annotations.NullMarked;
