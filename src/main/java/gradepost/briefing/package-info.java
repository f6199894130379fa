/**
 * The document as an immutable value: what every part of a pack says, in words, and in numbers that
 * a chart can be drawn from.
 *
 * <p>In: texts and numbers, written by the packages below this one, which know plans; this one does
 * not. Out: values that a template lays out and a canvas draws. PDF and HTML are made from the same
 * value. The sentences stand in one catalogue, {@link gradepost.briefing.Messages}.
 *
 * <p>Not promised: anything about paper, fonts or colours. Every place, speed and pressure in a
 * text is already rounded to its safe side; numbers in charts are not rounded.
 */
@NullMarked
package gradepost.briefing;

import org.jspecify.annotations.NullMarked;
