/**
 * What is left when a brake gives nothing: the last place for each brake, and what comes of asking
 * the next one.
 *
 * <p>In: metres, metres per second and seconds of a run. Out: values that are told. Nothing is
 * worked out or rounded here.
 */
@NullMarked
package gradepost.plan.fallback;

import org.jspecify.annotations.NullMarked;
